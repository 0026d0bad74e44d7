import type { z } from 'zod'
import {
  metresPerSecondToMph,
  metresToBoards,
  metresToFeet,
  radiansPerSecondToRpm,
  radiansToDegrees,
} from '../../../sim/units.js'
import type { BowlerProfile, ErrorSpread, ReleaseNumbers } from '../../../sim/world/bowler/profile.js'
import type { ownBowlerFields } from '../schema/own-bowler.js'
import { rounded } from '../text/json.js'

type OwnFigures = z.output<typeof ownBowlerFields>

/** A bowler's figures as a scenario file has them under `level: own`, rounded as one would write them. */
export function ownFigures(profile: BowlerProfile, name: string): OwnFigures {
  return {
    level: 'own',
    name,
    hand: profile.hand,
    strike: releaseData(profile.strike),
    spare: releaseData(profile.spare),
    error: spreadData(profile.error),
    spareError: spreadData(profile.spareError),
    speedStepMph: rounded(metresPerSecondToMph(profile.speedStepMetresPerSecond), 2),
    offNormalErrorFactor: profile.offNormalErrorFactor,
    slideToLaydownBoards: rounded(metresToBoards(profile.slideToLaydownMetres), 1),
  }
}

const releaseData = (release: ReleaseNumbers): OwnFigures['strike'] => ({
  speedMph: rounded(metresPerSecondToMph(release.speedMetresPerSecond), 1),
  spinRpm: rounded(radiansPerSecondToRpm(release.spinRadiansPerSecond), 0),
  rotationDegrees: rounded(radiansToDegrees(release.rotationRadians), 0),
  tiltDegrees: rounded(radiansToDegrees(release.tiltRadians), 0),
  loftFeet: rounded(metresToFeet(release.loftMetres), 1),
})

const spreadData = (error: ErrorSpread): OwnFigures['error'] => ({
  laydownBoards: rounded(metresToBoards(error.lateralMetres), 2),
  angleDegrees: rounded(radiansToDegrees(error.angleRadians), 2),
  speedMph: rounded(metresPerSecondToMph(error.speedMetresPerSecond), 2),
  spinRpm: rounded(radiansPerSecondToRpm(error.spinRadiansPerSecond), 0),
  rotationDegrees: rounded(radiansToDegrees(error.rotationRadians), 1),
  lateralAngleCorrelation: error.lateralAngleCorrelation,
  speedSpinCorrelation: error.speedSpinCorrelation,
})
