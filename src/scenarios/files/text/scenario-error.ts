/** What is wrong with a file someone wrote, one sentence a problem; never a fault of the program. */
export class ScenarioError extends Error {
  readonly sentences: readonly string[]
  /** Whether the file could not be read at all, rather than read and found wrong. */
  readonly missing: boolean

  constructor(sentences: readonly string[], missing = false) {
    super(sentences.join('\n'))
    this.name = 'ScenarioError'
    this.sentences = sentences
    this.missing = missing
  }
}
