/**
 * The same lines; while the next is waited for, work is done a little at a time.
 * @param step does a little and says whether there is more to do
 */
export async function* whileWaiting(lines: AsyncIterable<string>, step: () => boolean): AsyncIterable<string> {
  const source = lines[Symbol.asyncIterator]()
  try {
    for (;;) {
      let isHere = false
      const next = source.next().finally(() => {
        isHere = true
      })
      for (let isMore = true; isMore && !isHere; ) {
        await new Promise((turn) => setImmediate(turn))
        isMore = !isHere && step()
      }
      const { done, value } = await next
      if (done) return
      yield value
    }
  } finally {
    await source.return?.()
  }
}
