/** Days after which something practised comes back. A plain ladder: expanding ones do no better than even ones (Latimier and others 2021). */
export const LADDER_DAYS = [1, 3, 7, 21] as const

/** Where something stands on the ladder, by days counted from any fixed day. */
export interface Rung {
  /** Which wait it is in. */
  readonly step: number
  readonly dueDay: number
}

/** The rung after practice on a day: one up where it was sound, else from the start. */
export function nextRung(rung: Rung | null, day: number, isSound: boolean): Rung {
  const isEarly = rung !== null && day < rung.dueDay
  const step = !isSound ? 0 : rung === null ? 0 : isEarly ? rung.step : Math.min(rung.step + 1, LADDER_DAYS.length - 1)
  return { step, dueDay: day + LADDER_DAYS[step] }
}

export const isDue = ({ dueDay }: Rung, day: number): boolean => day >= dueDay
