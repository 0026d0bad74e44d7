import type { BallData } from '../../scenarios/files/schema/ball.js'
import { ballFaults, bowlerFaults, freeBallId, MOST_BALLS, type OwnKit } from '../../scenarios/store/own-kit.js'
import { BALL_FIELDS, newBall, startingBag } from '../forms/ball-form.js'
import { bowlerFields, startingBowler } from '../forms/bowler-form.js'
import {
  type FormField,
  type FormKey,
  type FormState,
  openForm,
  pasteInto,
  reduceForm,
  settleTyping,
} from '../forms/form.js'
import type { Command } from '../keys/binding.js'
import type { AppState, ScreenOf } from './app-state.js'
import { atHome } from './home-entries.js'
import { moved } from './lists.js'
import { pastedName } from './naming.js'

/** What the list of the kit offers below the balls. */
export type KitEntry =
  | { readonly kind: 'ball'; readonly place: number }
  | { readonly kind: 'add-ball' }
  | { readonly kind: 'take-bag' }
  | { readonly kind: 'bowler' }

export function kitEntries({ bag }: OwnKit): readonly KitEntry[] {
  return [
    ...bag.map((_, place) => ({ kind: 'ball', place }) as const),
    ...(bag.length < MOST_BALLS ? [{ kind: 'add-ball' } as const] : []),
    ...(bag.length === 0 ? [{ kind: 'take-bag' } as const] : []),
    { kind: 'bowler' },
  ]
}

export function reduceKit(
  state: AppState,
  screen: ScreenOf<'kit' | 'ball' | 'own-bowler'>,
  command: Command,
): AppState {
  switch (screen.kind) {
    case 'kit':
      return list(state, screen.cursor, command)
    case 'ball':
      return ball(state, screen, command)
    case 'own-bowler':
      return bowler(state, screen, command)
  }
}

/** Pasted text goes into the line under the hand of a form; anywhere else it means nothing. */
export function pasted(state: AppState, text: string): AppState {
  const { screen } = state
  if (screen.kind === 'bowler') return { ...state, screen: pastedName(screen, text) }
  if (screen.kind === 'ball') {
    return { ...state, screen: { ...screen, form: pasteInto(screen.form, BALL_FIELDS, text) } }
  }
  if (screen.kind === 'own-bowler') {
    return { ...state, screen: { ...screen, form: pasteInto(screen.form, bowlerFields(screen.form.draft), text) } }
  }
  return state
}

function list(state: AppState, cursor: number, command: Command): AppState {
  const { kit } = state
  const entries = kitEntries(kit)
  const entry = entries[cursor]
  switch (command) {
    case 'back':
      return { ...state, screen: atHome(state) }
    case 'undo': {
      const before = state.kitUndo.at(-1)
      if (!before) return { ...state, notice: 'Nothing to undo.' }
      return { ...state, kit: before, kitUndo: state.kitUndo.slice(0, -1), screen: { kind: 'kit', cursor: 0 } }
    }
    case 'remove':
      if (entry?.kind === 'ball') return withKit(state, { ...kit, bag: kit.bag.toSpliced(entry.place, 1) }, cursor)
      if (entry?.kind === 'bowler' && kit.bowler) return withKit(state, { ...kit, bowler: null }, cursor)
      return { ...state, notice: 'There is nothing here to take out.' }
    case 'enter':
      if (entry?.kind === 'ball') return openBall(state, kit.bag[entry.place]!, entry.place)
      if (entry?.kind === 'add-ball') return openBall(state, newBall(), null)
      if (entry?.kind === 'take-bag') return withKit(state, { ...kit, bag: startingBag() }, 0)
      return {
        ...state,
        screen: { kind: 'own-bowler', form: openForm(kit.bowler ?? startingBowler(usualHand(state))) },
      }
    default:
      return { ...state, screen: { kind: 'kit', cursor: moved(cursor, command, entries.length) } }
  }
}

const usualHand = ({ settings }: AppState) => (settings.hand === 'left' ? 'left' : 'right')

const openBall = (state: AppState, draft: BallData, place: number | null): AppState => ({
  ...state,
  screen: { kind: 'ball', form: openForm(draft), place },
})

function withKit(state: AppState, kit: OwnKit, cursor: number): AppState {
  const last = kitEntries(kit).length - 1
  return {
    ...state,
    kit,
    kitUndo: [...state.kitUndo, state.kit],
    screen: { kind: 'kit', cursor: Math.min(cursor, last) },
  }
}

function ball(state: AppState, screen: ScreenOf<'ball'>, command: Command): AppState {
  const { place } = screen
  if (command === 'back') return { ...state, screen: { kind: 'kit', cursor: place ?? state.kit.bag.length } }
  if (command !== 'enter') {
    return { ...state, screen: { ...screen, form: filledIn(screen.form, BALL_FIELDS, command) } }
  }
  const form = settleTyping(screen.form, BALL_FIELDS)
  const others = place === null ? state.kit.bag : state.kit.bag.toSpliced(place, 1)
  const draft = place === null ? { ...form.draft, id: freeBallId(form.draft.name, others) } : form.draft
  const faults = ballFaults(draft, others)
  if (faults.length > 0) return { ...state, screen: { ...screen, form: { ...form, faults } } }
  const bag = place === null ? [...state.kit.bag, draft] : state.kit.bag.with(place, draft)
  return withKit(state, { ...state.kit, bag }, place ?? bag.length - 1)
}

function bowler(state: AppState, screen: ScreenOf<'own-bowler'>, command: Command): AppState {
  const cursor = kitEntries(state.kit).length - 1
  if (command === 'back') return { ...state, screen: { kind: 'kit', cursor } }
  const fields = bowlerFields(screen.form.draft)
  if (command !== 'enter') {
    return { ...state, screen: { ...screen, form: filledIn(screen.form, fields, command) } }
  }
  const form = settleTyping(screen.form, fields)
  const faults = bowlerFaults(form.draft)
  if (faults.length > 0) return { ...state, screen: { ...screen, form: { ...form, faults } } }
  return withKit(state, { ...state.kit, bowler: form.draft }, cursor)
}

const FORM_KEYS: readonly Command[] = ['up', 'down', 'left', 'right', 'erase']

function filledIn<Draft>(
  form: FormState<Draft>,
  fields: readonly FormField<Draft>[],
  command: Command,
): FormState<Draft> {
  const isFormKey = FORM_KEYS.includes(command) || (typeof command === 'object' && 'type' in command)
  return isFormKey ? reduceForm(form, fields, command as FormKey) : form
}
