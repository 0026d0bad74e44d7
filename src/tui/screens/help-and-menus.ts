import type { Size } from '../draw/layout.js'
import type { Theme } from '../draw/theme.js'
import { BALL_FIELDS } from '../forms/ball-form.js'
import { bowlerFields } from '../forms/bowler-form.js'
import { type AppState, keyContext } from '../state/app-state.js'
import { bowlerEntries, chosenScenario } from '../state/bowler-choice.js'
import { listedScenarios } from '../state/reduce-menus.js'
import type { TrainerServices } from '../state/services.js'
import type { Looks } from '../state/tasks.js'
import { debriefScreen } from './debrief/debrief-screen.js'
import { ownAccountScreen } from './debrief/own-account-screen.js'
import { whatIfScreen } from './debrief/what-if-screen.js'
import { averageWords } from './menus/average-words.js'
import { bowlerScreen } from './menus/bowler-screen.js'
import { drillOverScreen } from './menus/drill-over-screen.js'
import { formScreen } from './menus/form-screen.js'
import { helpScreen } from './menus/help-screen.js'
import { homeScreen } from './menus/home-screen.js'
import { kitScreen } from './menus/kit-screen.js'
import { pastScreen } from './menus/past-screen.js'
import { progressScreen } from './menus/progress-screen.js'
import { scenarioScreen } from './menus/scenario-screen.js'
import { settingsScreen } from './menus/settings-screen.js'
import { practiceScreen } from './practice/practice-screen.js'

interface MenuParts {
  readonly state: AppState
  readonly looks: Pick<Looks, 'homePicture'>
  readonly services: Pick<TrainerServices, 'levels' | 'fit' | 'meantBoards'>
  readonly size: Size
  readonly theme: Theme
}

const BALL_WORDS = {
  title: 'A ball of your own',
  about:
    'Arrows change a figure, or type one. Sanding to a lower grit or leaving it unpolished makes a cover take more oil and turn earlier.',
}
const BOWLER_WORDS = {
  title: 'Your bowler',
  about:
    'Averages are of 40 simulated games by rule of thumb, right 19 times of 20. Own figures start from the typical bowler chosen before; a certified coach can measure speed, revolutions and scatter.',
}

/** The rows of whatever screen is on, but for the play screen. */
export function screenRows({ state, looks, services, size, theme }: MenuParts): string[] {
  if (state.help) return helpScreen(keyContext({ ...state, help: null }), state.help, size, theme)
  const { screen, notice } = state
  switch (screen.kind) {
    case 'home':
      return homeScreen(state, screen.cursor, looks.homePicture, size, theme)
    case 'scenarios':
      return scenarioScreen(
        { listed: listedScenarios(state, screen.filter), ...screen, played: state.played, notice },
        size,
        theme,
      )
    case 'bowler': {
      const chosen = chosenScenario(state, screen, services)
      const entries = bowlerEntries(state.kit, services)
      return bowlerScreen({ choice: screen, chosen, entries, kit: state.kit, notice }, size, theme)
    }
    case 'past':
      return pastScreen(screen, notice, size, theme)
    case 'progress':
      return progressScreen(screen, notice, size, theme)
    case 'kit':
      return kitScreen(state.kit, screen.cursor, notice, size, theme)
    case 'ball':
      return formScreen(BALL_WORDS, screen.form, BALL_FIELDS, size, theme)
    case 'own-bowler':
      return formScreen(
        {
          ...BOWLER_WORDS,
          told: averageWords(screen.averages?.of === screen.form.draft ? screen.averages : undefined),
        },
        screen.form,
        bowlerFields(screen.form.draft),
        size,
        theme,
      )
    case 'drill-over':
      return drillOverScreen(screen.drill, notice, size, theme)
    case 'settings':
      return settingsScreen(state.settings, screen.cursor, notice, size, theme)
    case 'debrief': {
      const { play, debrief } = screen
      if (debrief.own) return ownAccountScreen(play, debrief.own, size, theme)
      if (debrief.whatIf) return whatIfScreen(play, debrief.whatIf, services.meantBoards, size, theme)
      return debriefScreen(play, debrief, notice, size, theme, state.compared)
    }
    case 'practice':
      return practiceScreen(screen.practice, notice, size, theme)
    case 'play':
      return []
  }
}
