/** Lines of a common source: who stops reading leaves the rest for who comes next. */
export async function* sharedLines(typed: AsyncIterator<string>): AsyncIterable<string> {
  for (;;) {
    const { done, value } = await typed.next()
    if (done) return
    yield value
  }
}
