const DAY_MILLISECONDS = 86_400_000

/** The day a local time shows on its own clock, counted from 1970. @param at as localTime writes it */
export const dayOf = (at: string): number => Math.floor(Date.parse(`${at.slice(0, 10)}T00:00:00Z`) / DAY_MILLISECONDS)
