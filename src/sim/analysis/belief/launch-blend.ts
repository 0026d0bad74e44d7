import type { Launch } from '../../world/ball/launch.js'
import type { ScratchLaunch } from '../../world/bowler/release.js'

/** A running weighted mean of launches. */
export interface LaunchBlend {
  /** Weighted sums, field by field. */
  readonly sums: ScratchLaunch
  weight: number
}

export function newLaunchBlend(): LaunchBlend {
  const sums: ScratchLaunch = {
    startMetres: 0,
    lateralMetres: 0,
    directionX: 0,
    directionY: 0,
    speedMetresPerSecond: 0,
    spinRadiansPerSecond: 0,
    sineRotation: 0,
    cosineRotation: 0,
    sineTilt: 0,
    cosineTilt: 0,
  }
  return { sums, weight: 0 }
}

const FIELDS = Object.keys(newLaunchBlend().sums) as (keyof Launch)[]

export function clearBlend(blend: LaunchBlend): void {
  blend.weight = 0
  for (const field of FIELDS) blend.sums[field] = 0
}

export function addToBlend(blend: LaunchBlend, launch: Launch, weight: number): void {
  blend.weight += weight
  for (const field of FIELDS) blend.sums[field] += weight * launch[field]
}

/** Writes the mean into `launch`; its directions are made unit vectors again. */
export function writeBlend(blend: LaunchBlend, launch: ScratchLaunch): void {
  for (const field of FIELDS) launch[field] = blend.sums[field] / blend.weight
  makeUnit(launch, 'directionX', 'directionY')
  makeUnit(launch, 'cosineRotation', 'sineRotation')
  makeUnit(launch, 'cosineTilt', 'sineTilt')
}

function makeUnit(launch: ScratchLaunch, first: keyof Launch, second: keyof Launch): void {
  const length = Math.sqrt(launch[first] * launch[first] + launch[second] * launch[second])
  launch[first] /= length
  launch[second] /= length
}
