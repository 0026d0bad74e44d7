import { render, useApp, useInput } from 'ink'
import { useEffect, useLayoutEffect, useMemo, useReducer, useRef, useState } from 'react'
import { type HitArea, takeHits } from '../draw/hits.js'
import { fits, type Size } from '../draw/layout.js'
import type { Theme } from '../draw/theme.js'
import { keyName } from '../keys/keys.js'
import { screenRows } from '../screens/help-and-menus.js'
import { smallScreen } from '../screens/menus/small-screen.js'
import { BagScreen, playScreenRows } from '../screens/play/play-screen.js'
import { themeWith } from '../settings/settings.js'
import { type AppState, keyContext } from '../state/app-state.js'
import { reducer } from '../state/reduce.js'
import type { TrainerServices } from '../state/services.js'
import { useTasks } from '../state/tasks.js'
import { useMouse } from '../state/use-mouse.js'
import type { KeyReader } from '../terminal/key-reader.js'
import { PaintedRows } from '../terminal/painted-rows.js'
import type { Painter } from '../terminal/painter.js'

export interface TrainerParts {
  readonly painter: Painter
  readonly keys: KeyReader
  readonly services: TrainerServices
  readonly theme: Theme
  readonly initial: AppState
  /** Jump to results instead of letting the ball run. */
  readonly noMotion: boolean
}

/** Draws the trainer on a painter until it is left; resolves to the exit code. */
export async function runTrainer(parts: TrainerParts): Promise<number> {
  const app = render(<Trainer {...parts} />, {
    stdout: parts.painter as unknown as NodeJS.WriteStream,
    stdin: parts.keys as unknown as NodeJS.ReadStream,
    // Every write is a whole frame, which the painter then compares with the last one.
    debug: true,
    patchConsole: false,
    exitOnCtrlC: false,
  })
  const exitCode = await app.waitUntilExit()
  return typeof exitCode === 'number' ? exitCode : 0
}

/** Enter, Escape and the space bar, as the terminal sends them. */
const SKIPPING = ['\r', '\u001B', ' ']

export function Trainer({ painter, keys, services, theme, initial, noMotion }: TrainerParts) {
  const { exit } = useApp()
  const [state, dispatch] = useReducer(
    useMemo(() => reducer(services), [services]),
    initial,
  )
  const size = usePainterSize(painter)
  const { colour, characters, theme: look, mouse } = state.settings
  const looksOf = useMemo(
    () => themeWith(theme, { colour, characters, theme: look }),
    [theme, colour, characters, look],
  )
  const context = keyContext(state)
  const looks = useTasks(state, dispatch, services, noMotion)

  useInput((input, key) => {
    const name = keyName(input, key)
    if (fits(size) || name === 'q') dispatch({ type: 'key', name, bagDrawn: context === 'bag' })
  })
  useEffect(() => {
    const onPaste = (text: string) => dispatch({ type: 'pasted', text })
    keys.on('paste', onPaste)
    return () => void keys.off('paste', onPaste)
  }, [keys])
  const isBusy = state.screen.kind === 'play' && !state.help && /weighing|rolling/.test(state.screen.play.stage.kind)
  // What is typed while a ball is on its way waits for the next decision; only what skips it comes through.
  useLayoutEffect(() => keys.hold(isBusy ? (key) => !SKIPPING.includes(key) : null), [keys, isBusy])
  const areas = useRef<readonly HitArea[]>([])
  useMouse(mouse === 'on', painter, keys, areas, dispatch)
  useEffect(() => {
    if (state.exitCode !== null) (exit as (result: unknown) => void)(state.exitCode)
  }, [state.exitCode, exit])

  if (!fits(size)) return <PaintedRows painter={painter} rows={smallScreen(size)} />
  const painted = (rows: readonly string[]) => {
    const shown = takeHits(rows)
    areas.current = shown.areas
    return <PaintedRows painter={painter} rows={shown.rows} />
  }
  if (state.screen.kind === 'play' && !state.help) {
    const play = state.notice === '' ? state.screen.play : { ...state.screen.play, notice: state.notice }
    const parts = { play, view: looks.view, fall: looks.fall, compared: state.compared, context, size, theme: looksOf }
    if (context !== 'bag') return painted(playScreenRows(parts))
    return <BagScreen {...parts} onChoose={(place) => dispatch({ type: 'ball-chosen', place })} />
  }
  return painted(screenRows({ state, looks, services, size, theme: looksOf }))
}

function usePainterSize(painter: Painter): Size {
  const [size, setSize] = useState<Size>({ columns: painter.columns, rows: painter.rows })
  useEffect(() => {
    const onResize = () => setSize({ columns: painter.columns, rows: painter.rows })
    painter.on('resize', onResize)
    return () => {
      painter.off('resize', onResize)
    }
  }, [painter])
  return size
}
