/** No process has a number this high on any system we know. */
const DEAD_PID = 2 ** 30

/** What a journal is called once the program that plays it has died. */
export const leftByDead = (journal: string): string => journal.replace(/\.\d+\.jsonl$/, `.${DEAD_PID}.jsonl`)
