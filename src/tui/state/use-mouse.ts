import { type Dispatch, type RefObject, useEffect } from 'react'
import { areaAt, type HitArea } from '../draw/hits.js'
import { LANE_FEET } from '../draw/lane-scale.js'
import type { KeyReader, MousePress } from '../terminal/key-reader.js'
import type { Painter } from '../terminal/painter.js'
import type { Action } from './app-state.js'

// xterm's control sequences: presses and releases are reported (1000), with coordinates in decimal (1006).
const ON = '\u001B[?1000h\u001B[?1006h'
const OFF = '\u001B[?1006l\u001B[?1000l'
const LEFT_BUTTON = 0
const WHEEL: Readonly<Record<number, 'up' | 'down'>> = { 64: 'up', 65: 'down' }

/** Has the terminal report the mouse while it is wanted: clicks on what is marked on the screen, and the wheel as arrows. */
export function useMouse(
  isOn: boolean,
  painter: Painter,
  keys: KeyReader,
  areas: RefObject<readonly HitArea[]>,
  dispatch: Dispatch<Action>,
): void {
  useEffect(() => {
    if (!isOn) return
    painter.send(ON)
    const onMouse = ({ button, column, row }: MousePress) => {
      const turned = WHEEL[button]
      if (turned) dispatch({ type: 'key', name: turned, bagDrawn: false })
      const area = button === LEFT_BUTTON ? areaAt(areas.current, column, row) : null
      if (area) dispatch({ type: 'clicked', hit: area.hit, feet: feetAt(area, column) })
    }
    keys.on('mouse', onMouse)
    return () => {
      keys.off('mouse', onMouse)
      painter.send(OFF)
    }
  }, [isOn, painter, keys, areas, dispatch])
}

function feetAt({ hit }: HitArea, column: number): number {
  return hit.kind === 'lane' ? ((column + 0.5 - hit.left) / hit.columns) * LANE_FEET : 0
}
