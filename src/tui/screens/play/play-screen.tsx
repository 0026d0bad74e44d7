import { Box, Text } from 'ink'
import SelectInput from 'ink-select-input'
import { useState } from 'react'
import { ballWords } from '../../../scenarios/words/words.js'
import type { PlayerView } from '../../../sim/analysis/view/player-view.js'
import type { PinFall } from '../../../sim/world/block/pin-fall.js'
import { takeHits } from '../../draw/hits.js'
import { indent, page, type Size } from '../../draw/layout.js'
import { Rows } from '../../draw/rows.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import type { KeyContext } from '../../keys/binding.js'
import { beliefRows } from '../../parts/belief.js'
import { contextKeyLine, type KeyWords } from '../../parts/key-hints.js'
import type { Compared } from '../../state/app-state.js'
import type { DecisionField } from '../../state/decision-fields.js'
import { blockOf, canCall, type PlayState } from '../../state/play-state.js'
import { wrapWords } from '../../terminal/fit.js'
import { callRows } from './call.js'
import { drillDoneRows } from './drill-rows.js'
import { playLowerRows, playTopRows } from './play-rows.js'
import { recentThrowRows } from './recent-throws.js'

interface PlayScreenParts {
  readonly play: PlayState
  readonly view: PlayerView | null
  /** How the pins of a rolling ball fall, once worked out. */
  readonly fall: PinFall | null
  /** What others score on the block's luck, as far as it is worked out. */
  readonly compared?: Compared | null
  readonly context: KeyContext
  readonly size: Size
  readonly theme: Theme
}

/** The main screen: lane and result on top, score sheet and decision below. */
export function playScreenRows({ play, view, fall, compared, context, size, theme }: PlayScreenParts): string[] {
  const top = playTopRows(play, view, size, theme, fall)
  const body = [...top, ...lowerRows({ play, view, size, top, theme, compared: compared ?? null })]
  return page(
    body,
    contextKeyLine(
      context,
      size.columns,
      theme,
      context === 'play' ? keyWords(play) : play.contest === undefined ? overWords(play) : doneWords(play),
    ),
    size,
  )
}

const STEP_WORDS: Readonly<Record<DecisionField, string>> = {
  ball: 'ball',
  feet: 'left, right',
  target: 'left, right',
  speed: 'firmer, softer',
  release: 'release',
}

/** An entry that is over shows no oil yet. */
const doneWords = (play: PlayState): KeyWords =>
  play.contest !== undefined && play.stage.kind === 'done'
    ? { enter: 'leave', 'same-luck': null, 'other-luck': null, 'other-player': null }
    : {}

/** What the keys of the main screen do to the field under the hand, and which have nothing to do. */
const keyWords = (play: PlayState): KeyWords => ({
  up: STEP_WORDS[play.field],
  ...(canCall(play) ? {} : { call: null }),
  ...(play.undo.length > 0 ? {} : { undo: null }),
})

/** Nobody else's block is to be looked at where nobody else bowled; a short block's lane is not bowled again. */
const overWords = (play: PlayState): KeyWords => ({
  ...(play.rival?.kind === 'guest' ? {} : { 'other-player': null }),
  ...(play.isShort && play.stage.kind === 'done' ? { 'same-luck': null, 'other-luck': null } : {}),
})

/** The main screen with the open bag in place of its lower part. */
export function BagScreen(props: PlayScreenParts & Pick<BagProps, 'onChoose'>) {
  const { play, view, context, size, theme, onChoose } = props
  const top = takeHits(playTopRows(play, view, size, theme)).rows
  return (
    <Box flexDirection="column" height={size.rows}>
      <Rows rows={top} columns={size.columns} />
      <Bag play={play} columns={size.columns} rows={size.rows - top.length - 1} theme={theme} onChoose={onChoose} />
      <Box flexGrow={1} />
      <Rows rows={[contextKeyLine(context, size.columns, theme)]} columns={size.columns} />
    </Box>
  )
}

/** Rows of the screen above what lies open in its lower part, and the keys below it. */
const rowsBelow = (size: Size, top: readonly string[]): number => size.rows - top.length - 1

interface LowerParts extends Pick<PlayScreenParts, 'play' | 'view' | 'size' | 'theme'> {
  readonly top: readonly string[]
  readonly compared: Compared | null
}

function lowerRows({ play, view, size, top, theme, compared }: LowerParts): string[] {
  const rows = rowsBelow(size, top)
  if (play.stage.kind === 'done' && play.drill) return drillDoneRows(play, size.columns - 2, rows, theme)
  if (play.open === 'history') {
    const { setup } = blockOf(play)
    return indent(recentThrowRows(view?.onThisLane ?? [], setup, Math.min(116, size.columns - 2), rows, theme), 1)
  }
  if (play.open === 'call' && play.call) return indent(callRows(play.call, blockOf(play).setup.bowler.hand, theme), 1)
  if (play.open === 'belief') return indent(beliefRows(play.belief, size.columns - 2, theme), 1)
  return playLowerRows(play, view, size, theme, compared)
}

interface BagProps {
  readonly play: PlayState
  readonly columns: number
  readonly rows: number
  readonly theme: Theme
  readonly onChoose: (place: number) => void
}

const NAME_COLUMNS = 38

function Bag({ play, columns, rows, theme, onChoose }: BagProps) {
  const { bag } = blockOf(play).setup
  const current = Math.max(
    0,
    bag.findIndex((ball) => ball.id === play.decision.ballId),
  )
  const [looked, lookAt] = useState(current)
  const items = bag.map((ball, place) => ({ key: ball.id, label: `${place + 1} ${ball.name}`, value: place }))
  const details = wrapWords(ballWords(bag[looked]!), columns - NAME_COLUMNS - 3)
  return (
    <Box flexDirection="column" height={rows} overflow="hidden">
      <Text>{textRow(theme, [' The bag', 'strong'])}</Text>
      <Box>
        <Box width={NAME_COLUMNS} paddingLeft={1}>
          <SelectInput
            items={items}
            initialIndex={current}
            limit={rows - 1}
            onHighlight={(item) => lookAt(item.value)}
            onSelect={(item) => onChoose(item.value)}
            indicatorComponent={({ isSelected = false }) => (
              <Text>{isSelected ? textRow(theme, [`${theme.glyphs.pointer} `, 'accent']) : '  '}</Text>
            )}
            itemComponent={({ label, isSelected = false }) => (
              <Text wrap="truncate">{textRow(theme, [label, isSelected ? 'accent' : 'plain'])}</Text>
            )}
          />
        </Box>
        <Rows rows={details} columns={columns - NAME_COLUMNS} />
      </Box>
    </Box>
  )
}
