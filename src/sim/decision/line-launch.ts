import type { Launch } from '../ball/launch.js'
import type { ReleaseNumbers } from '../bowler/profile.js'
import { ARROWS_METRES, launchFrom } from '../bowler/release.js'

/** A launch that is filled again and again, so that a search allocates nothing. */
export type ScratchLaunch = { -readonly [Key in keyof Launch]: Launch[Key] }

/** A scratch launch with everything of the release that does not change from line to line. */
export function scratchLaunch(release: ReleaseNumbers): ScratchLaunch {
  return { ...launchFrom(release, 0, 0) }
}

/** Points the launch along the line from a laydown at the foul line through a place `swingMetres` left of it at the arrows. */
export function pointLaunch(launch: ScratchLaunch, laydownMetres: number, swingMetres: number): void {
  const length = Math.sqrt(ARROWS_METRES * ARROWS_METRES + swingMetres * swingMetres)
  launch.directionX = ARROWS_METRES / length
  launch.directionY = swingMetres / length
  launch.lateralMetres = laydownMetres + (swingMetres * launch.startMetres) / ARROWS_METRES
}
