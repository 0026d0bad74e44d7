/** No control characters; written without flags, so that editors read the same pattern in the JSON Schema. */
export const ONE_LINE = /^[\u0020-\u007e\u00a0-\uffff]*$/

/** Whether a text is one line of 1 to `most` characters. */
export const isLine = (text: string, most: number): boolean =>
  text.length >= 1 && text.length <= most && ONE_LINE.test(text)

/** What such a line is, in words. */
export const lineWords = (most: number): string => `one line of text, 1 to ${most} characters`
