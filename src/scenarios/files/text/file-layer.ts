import * as promises from 'node:fs/promises'

/** The calls by which blocks are kept, gathered so that tests can let each of them fail. */
export type FileLayer = Pick<
  typeof promises,
  'open' | 'mkdir' | 'readdir' | 'readFile' | 'link' | 'rename' | 'unlink' | 'stat' | 'lstat' | 'utimes'
>

export const NODE_FILES: FileLayer = promises
