import { type FileLayer, NODE_FILES } from '../../../src/scenarios/files/text/file-layer.js'

/** The calls that can be made to fail: those of the layer, and those of a file it has opened. */
export type Call =
  | keyof FileLayer
  | 'file.writeFile'
  | 'file.appendFile'
  | 'file.sync'
  | 'file.datasync'
  | 'file.truncate'
  | 'file.stat'

export interface FaultyFiles {
  readonly files: FileLayer
  /** Every call made so far, in order. */
  readonly calls: Call[]
  /** Files that are open. */
  readonly open: () => number
}

/**
 * Real files behind calls that may fail: `faultAt` is asked before each call, with its number from 0, and a code it gives is what the call
 * fails with. A write that fails has written half of what it was given, as a full disk does.
 */
export function faultyFiles(faultAt: (call: Call, number: number, path: string) => string | null): FaultyFiles {
  const calls: Call[] = []
  let open = 0
  const meet = (call: Call, path: string): void => {
    const code = faultAt(call, calls.length, path)
    calls.push(call)
    if (code !== null) throw Object.assign(new Error(`${code}: made to fail, ${call} '${path}'`), { code })
  }
  const guarded = (name: keyof FileLayer) =>
    (async (...parts: unknown[]) => {
      meet(name, String(parts[0]))
      return (NODE_FILES[name] as (...all: unknown[]) => unknown)(...parts)
    }) as never
  const openGuarded = (async (path: string, ...rest: never[]) => {
    meet('open', path)
    const file = await NODE_FILES.open(path, ...rest)
    open++
    return new Proxy(file, {
      get(target, name) {
        const value = Reflect.get(target, name)
        if (typeof value !== 'function') return value
        return async (...parts: unknown[]) => {
          if (name === 'close') open--
          if (name !== 'close') {
            try {
              meet(`file.${String(name)}` as Call, path)
            } catch (fault) {
              const text = parts[0]
              if (/write|append/.test(String(name)) && typeof text === 'string') {
                await file.appendFile(text.slice(0, Math.floor(text.length / 2)))
              }
              throw fault
            }
          }
          return value.apply(target, parts)
        }
      },
    })
  }) as never
  const names = ['mkdir', 'readdir', 'readFile', 'link', 'rename', 'unlink', 'stat', 'lstat', 'utimes'] as const
  const others = Object.fromEntries(names.map((name) => [name, guarded(name)]))
  const files = { ...others, open: openGuarded } as unknown as FileLayer
  return { files, calls, open: () => open }
}
