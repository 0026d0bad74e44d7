import type { Hardness } from '../hardness.js'
export const BUILT_IN_HARDNESS: Readonly<Record<string, Hardness>> = {}
