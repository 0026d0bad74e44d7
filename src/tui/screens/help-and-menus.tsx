import type { Size } from '../draw/layout.js'
import { Rows } from '../draw/rows.js'
import type { Theme } from '../draw/theme.js'
import type { TrainerServices } from '../services.js'
import type { AppState } from '../state/app-state.js'
import { chosenScenario } from '../state/reduce.js'
import type { Looks } from '../state/tasks.js'
import { bowlerScreen } from './bowler-screen.js'
import { debriefScreen } from './debrief-screen.js'
import { helpScreen } from './help-screen.js'
import { homeScreen } from './home-screen.js'
import { scenarioScreen } from './scenario-screen.js'

interface HelpAndMenusProps {
  readonly state: AppState
  readonly looks: Looks
  readonly services: TrainerServices
  readonly size: Size
  readonly theme: Theme
}

/** Every screen that is rows and nothing else. */
export function HelpAndMenus(props: HelpAndMenusProps) {
  return <Rows rows={screenRows(props)} columns={props.size.columns} />
}

function screenRows({ state, looks, services, size, theme }: HelpAndMenusProps): string[] {
  if (state.help) return helpScreen(size, theme)
  const { screen } = state
  switch (screen.kind) {
    case 'home':
      return homeScreen(state, screen.cursor, looks.homePicture, size, theme)
    case 'scenarios':
      return scenarioScreen(state.scenarios, screen.cursor, state.notice, size, theme)
    case 'bowler':
      return bowlerScreen(chosenScenario(screen, services), services.levels(), screen.cursor, state.notice, size, theme)
    case 'debrief':
      return debriefScreen(screen.play, screen.debrief, looks.rolls, size, theme)
    case 'play':
      return []
  }
}
