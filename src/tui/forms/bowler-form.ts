import { ownFigures as figuresOf } from '../../scenarios/files/scenario/own-figures.js'
import type { BowlerData } from '../../scenarios/store/own-kit.js'
import { LEAST_AVERAGE, MOST_AVERAGE, profileOfAverage } from '../../sim/world/bowler/between-levels.js'
import { LEVELS, type Level, levelProfile, STYLES, type Style } from '../../sim/world/bowler/levels.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { type FormField, numberField, textField } from './form.js'

type OwnFigures = Extract<BowlerData, { level: 'own' }>
type Typical = Exclude<BowlerData, { level: 'own' }>

/** The bowler an empty kit starts from. */
export const startingBowler = (hand: Hand): BowlerData => ({ level: '200', hand, style: 'tweener' })

const isOwn = (bowler: BowlerData): bowler is OwnFigures => bowler.level === 'own'

/** The lines a bowler's form has: a level and a style, or every figure. */
export function bowlerFields(bowler: BowlerData): readonly FormField<BowlerData>[] {
  return isOwn(bowler) ? [figures, hand, ...OWN_FIELDS] : [figures, hand, level, style]
}

const figures: FormField<BowlerData> = {
  label: 'Figures',
  shown: (bowler) => (isOwn(bowler) ? 'your own' : 'of a typical bowler'),
  step: (bowler) => (isOwn(bowler) ? startingBowler(bowler.hand) : ownFigures(bowler)),
}

const level: FormField<BowlerData> = {
  label: `Level, or type an average of ${LEAST_AVERAGE}-${MOST_AVERAGE}`,
  shown: (bowler) => (/^\d+$/.test(String(bowler.level)) ? `${bowler.level} average` : String(bowler.level)),
  step: (bowler, by) => {
    if (isOwn(bowler)) return bowler
    const at = LEVELS.indexOf(String(bowler.level) as Level)
    return { ...bowler, level: LEVELS[(at + by + LEVELS.length) % LEVELS.length]! }
  },
  accepts: /^\d$/,
  typed: (bowler, text) => (isOwn(bowler) ? undefined : ofAverage(bowler, Number(text))),
}

const hand: FormField<BowlerData> = {
  label: 'Hand',
  shown: (bowler) => bowler.hand,
  step: (bowler) => ({ ...bowler, hand: bowler.hand === 'right' ? 'left' : 'right' }),
}

const style: FormField<BowlerData> = {
  label: 'Style',
  shown: (bowler) => (isOwn(bowler) ? '' : bowler.style),
  step: (bowler, by) => {
    if (isOwn(bowler)) return bowler
    const at = STYLES.indexOf(bowler.style as Style)
    return { ...bowler, style: STYLES[(at + by + STYLES.length) % STYLES.length]! }
  },
}

/** The level named by an average, or figures between two levels; undefined where no level is near. */
function ofAverage(bowler: Typical, average: number): BowlerData | undefined {
  if (!(average >= LEAST_AVERAGE && average <= MOST_AVERAGE)) return undefined
  const named = LEVELS.find((one) => one === String(average))
  if (named) return { ...bowler, level: named }
  const profile = profileOfAverage(average, bowler.style as Style, bowler.hand)
  return figuresOf(profile, profile.name)
}

/** The figures of a typical bowler, to be changed into one's own. */
function ownFigures(bowler: BowlerData): OwnFigures {
  if (isOwn(bowler)) return bowler
  const { level: ofLevel, style: ofStyle, hand: ofHand } = bowler as Typical
  return figuresOf(levelProfile(String(ofLevel) as Level, ofStyle, ofHand), 'You')
}

/** A figure of one's own; on a typical bowler, who has none, it is not shown. */
function figure(
  label: string,
  unit: string,
  step: number,
  decimals: number,
  read: (own: OwnFigures) => number,
  write: (own: OwnFigures, value: number) => OwnFigures,
): FormField<BowlerData> {
  return numberField<BowlerData>(
    label,
    unit,
    step,
    decimals,
    (bowler) => read(ownFigures(bowler)),
    (bowler, value) => write(ownFigures(bowler), value),
  )
}

type ReleaseKey = keyof OwnFigures['strike']
type SpreadKey = keyof OwnFigures['error']

const releaseFigure = (
  part: 'strike' | 'spare',
  key: ReleaseKey,
  label: string,
  unit: string,
  step: number,
  decimals: number,
) =>
  figure(
    label,
    unit,
    step,
    decimals,
    (own) => own[part][key],
    (own, value) => ({ ...own, [part]: { ...own[part], [key]: value } }),
  )

const spreadFigure = (
  part: 'error' | 'spareError',
  key: SpreadKey,
  label: string,
  unit: string,
  step: number,
  decimals: number,
) =>
  figure(
    label,
    unit,
    step,
    decimals,
    (own) => own[part][key],
    (own, value) => ({ ...own, [part]: { ...own[part], [key]: value } }),
  )

const releaseFigures = (part: 'strike' | 'spare', heading: string): FormField<BowlerData>[] => [
  { ...releaseFigure(part, 'speedMph', 'Speed', 'mph', 0.1, 1), heading },
  releaseFigure(part, 'spinRpm', 'Revolutions', 'rpm', 5, 0),
  releaseFigure(part, 'rotationDegrees', 'Axis rotation', 'degrees', 1, 0),
  releaseFigure(part, 'tiltDegrees', 'Axis tilt', 'degrees', 1, 0),
  releaseFigure(part, 'loftFeet', 'Touches down at', 'feet', 0.1, 1),
]

const spreadFigures = (part: 'error' | 'spareError', heading: string): FormField<BowlerData>[] => [
  { ...spreadFigure(part, 'laydownBoards', 'Laydown', 'boards', 0.05, 2), heading },
  spreadFigure(part, 'angleDegrees', 'Direction', 'degrees', 0.02, 2),
  spreadFigure(part, 'speedMph', 'Speed', 'mph', 0.05, 2),
  spreadFigure(part, 'spinRpm', 'Revolutions', 'rpm', 1, 0),
  spreadFigure(part, 'rotationDegrees', 'Axis rotation', 'degrees', 0.5, 1),
]

const OWN_FIELDS: readonly FormField<BowlerData>[] = [
  textField(
    'Name',
    (bowler) => ownFigures(bowler).name,
    (bowler, name) => ({ ...ownFigures(bowler), name }),
  ),
  ...releaseFigures('strike', 'Strike release'),
  ...releaseFigures('spare', 'Spare release'),
  ...spreadFigures('error', 'Strike misses, standard deviations'),
  ...spreadFigures('spareError', 'Spare misses, standard deviations'),
  {
    ...figure(
      'Softer and firmer by',
      'mph',
      0.05,
      2,
      (own) => own.speedStepMph,
      (own, speedStepMph) => ({ ...own, speedStepMph }),
    ),
    heading: 'Speed and feet',
  },
  figure(
    'Misses off the usual speed',
    'times as wide',
    0.05,
    2,
    (own) => own.offNormalErrorFactor,
    (own, offNormalErrorFactor) => ({ ...own, offNormalErrorFactor }),
  ),
  figure(
    'Slide foot to laydown',
    'boards',
    0.5,
    1,
    (own) => own.slideToLaydownBoards,
    (own, slideToLaydownBoards) => ({ ...own, slideToLaydownBoards }),
  ),
]
