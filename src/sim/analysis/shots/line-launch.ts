import { cosine, sine } from '../../exact-math.js'
import type { ReleaseNumbers } from '../../world/bowler/profile.js'
import { ARROWS_METRES, type ScratchLaunch, scratchLaunch } from '../../world/bowler/release.js'

/** A scratch launch with everything of the release that does not change from line to line. */
export function launchOfRelease(release: ReleaseNumbers): ScratchLaunch {
  return {
    ...scratchLaunch(),
    startMetres: release.loftMetres,
    speedMetresPerSecond: release.speedMetresPerSecond,
    spinRadiansPerSecond: release.spinRadiansPerSecond,
    sineRotation: sine(release.rotationRadians),
    cosineRotation: cosine(release.rotationRadians),
    sineTilt: sine(release.tiltRadians),
    cosineTilt: cosine(release.tiltRadians),
  }
}

/** Points the launch along the line from a laydown at the foul line through a place `swingMetres` left of it at the arrows. */
export function pointLaunch(launch: ScratchLaunch, laydownMetres: number, swingMetres: number): void {
  const length = Math.sqrt(ARROWS_METRES * ARROWS_METRES + swingMetres * swingMetres)
  launch.directionX = ARROWS_METRES / length
  launch.directionY = swingMetres / length
  launch.lateralMetres = laydownMetres + (swingMetres * launch.startMetres) / ARROWS_METRES
}
