import { localDate } from '../files/text/local-time.js'
import { type LaneOfTheDay, laneOfTheDay } from '../library/lane-of-the-day.js'
import { modelFingerprint } from './model-fingerprint.js'

/** The lane of the date that clocks here show; nowhere else is the date asked for. */
export const laneOfToday = (now: Date = new Date()): LaneOfTheDay => laneOfTheDay(localDate(now), modelFingerprint())
