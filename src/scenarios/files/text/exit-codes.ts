/** What the program ends with; the numbers follow the sysexits convention, signals are 128 + their number. */
export const EXIT = {
  fine: 0,
  checkFailed: 1,
  usage: 64,
  badData: 65,
  missingFile: 66,
  ourFault: 70,
  cannotWrite: 73,
} as const

/** What a shell sees of a program that a signal ended. */
export const SIGNAL_EXIT = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const
