/** A moment as clocks here show it, with the offset of the zone: `2026-03-08T19:04:11+01:00` (RFC 3339). */
export function localTime(when: Date): string {
  const minutes = -when.getTimezoneOffset()
  const offset = `${minutes < 0 ? '-' : '+'}${two(Math.floor(Math.abs(minutes) / 60))}:${two(Math.abs(minutes) % 60)}`
  const shown = new Date(when.getTime() + minutes * 60_000).toISOString().slice(0, 19)
  return `${shown}${offset}`
}

const two = (value: number): string => String(value).padStart(2, '0')

/** What localTime writes, from the year 2000 on. */
export const LOCAL_TIME =
  /^2\d{3}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d:[0-5]\d[+-](0\d|1[0-4]):[0-5]\d$/

/** The date that clocks here show, as 2026-11-27. */
export const localDate = (when: Date): string => localTime(when).slice(0, 10)
