import type { Scenario } from '../../scenarios/files/scenario/scenario.js'
import { ScenarioError } from '../../scenarios/files/text/scenario-error.js'
import type { BowlerData, OwnKit } from '../../scenarios/store/own-kit.js'
import type { Level } from '../../sim/world/bowler/levels.js'
import type { AppState, BowlerChoice } from './app-state.js'
import type { TrainerServices } from './services.js'

/** One bowler to choose. */
export type BowlerEntry =
  | { readonly kind: 'scenario' }
  | { readonly kind: 'own' }
  | { readonly kind: 'level'; readonly level: string }

export function bowlerEntries(kit: OwnKit, services: Pick<TrainerServices, 'levels'>): readonly BowlerEntry[] {
  return [
    { kind: 'scenario' },
    ...(kit.bowler ? [{ kind: 'own' } as const] : []),
    ...services.levels().map((level) => ({ kind: 'level', level }) as const),
  ]
}

export type Chosen = { readonly scenario: Scenario } | { readonly problem: string }

/** The scenario with the chosen bowler, bag and seeing in it, or what is wrong with that. */
export function chosenScenario(
  { kit, settings }: Pick<AppState, 'kit' | 'settings'>,
  choice: BowlerChoice,
  services: Pick<TrainerServices, 'levels' | 'fit'>,
): Chosen {
  const bowler = chosenBowler(kit, choice, services)
  try {
    return {
      scenario: services.fit(choice.scenario, {
        ...(bowler ? { bowler } : {}),
        ...(choice.bag === 'own' && kit.bag.length > 0 ? { bag: kit.bag } : {}),
        seeing: settings.seeing,
      }),
    }
  } catch (fault) {
    if (!(fault instanceof ScenarioError)) throw fault
    return { problem: fault.sentences[0] ?? fault.message }
  }
}

/** The bowler in place of the scenario's; null where that one bowls as written. */
function chosenBowler(
  kit: OwnKit,
  { scenario, cursor, hand, style }: BowlerChoice,
  services: Pick<TrainerServices, 'levels'>,
): BowlerData | null {
  const entry = bowlerEntries(kit, services)[cursor]
  if (entry?.kind === 'level') return { level: entry.level as Level, hand, style }
  if (entry?.kind === 'own' && kit.bowler) return { ...kit.bowler, hand }
  return hand === scenario.setup.bowler.hand ? null : { ...scenario.data.bowler, hand }
}
