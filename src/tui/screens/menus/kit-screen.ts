import { ballFromData } from '../../../scenarios/files/schema/ball.js'
import type { OwnKit } from '../../../scenarios/store/own-kit.js'
import { ballWords } from '../../../scenarios/words/words.js'
import { beside, page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { menuRows, menuWidth } from '../../parts/menu.js'
import { type KitEntry, kitEntries } from '../../state/reduce-kit.js'
import { clipRow, wrapWords } from '../../terminal/fit.js'

const NAME_COLUMNS = 34

/** The player's own balls and bowler. */
export function kitScreen(kit: OwnKit, cursor: number, notice: string, size: Size, theme: Theme): string[] {
  const entries = kitEntries(kit)
  const menu = menuRows(
    entries.map((entry) => clipRow(entryWords(entry, kit), NAME_COLUMNS)),
    cursor,
    theme,
  ).map((row) => ` ${row}`)
  const menuColumns = menuWidth(menu)
  const about = aboutWords(entries[cursor], kit).flatMap((words) =>
    wrapWords(words, Math.min(70, size.columns - menuColumns - 2)),
  )
  const body = [
    '',
    textRow(theme, [' Bag and bowler', 'strong'], ['  your own, to be chosen when a block is started', 'faint']),
    '',
    ...beside(menu, menuColumns, about),
    '',
    textRow(theme, [` ${notice}`, 'loss']),
  ]
  return page(body, contextKeyLine('kit', size.columns, theme), size)
}

function entryWords(entry: KitEntry, kit: OwnKit): string {
  switch (entry.kind) {
    case 'ball':
      return `${entry.place + 1} ${kit.bag[entry.place]!.name}`
    case 'add-ball':
      return 'Add a ball'
    case 'take-bag':
      return 'Start from the library bag'
    case 'bowler':
      return bowlerWords(kit)
  }
}

function bowlerWords({ bowler }: OwnKit): string {
  if (!bowler) return 'Your bowler: none yet'
  return bowler.level === 'own' ? `Your bowler: ${bowler.name}` : `Your bowler: ${bowler.level}, ${bowler.style}`
}

function aboutWords(entry: KitEntry | undefined, kit: OwnKit): string[] {
  switch (entry?.kind) {
    case 'ball':
      return [
        `${ballWords(ballFromData(kit.bag[entry.place]!))}.`,
        'Enter changes it. Between blocks a cover can be sanded or polished; that changes how much oil it takes and where it turns more than any other figure you can change after drilling.',
      ]
    case 'add-ball':
      return ['A ball with its own figures, held to the limits of the equipment rules.']
    case 'take-bag':
      return ['Six balls from the strongest to the straightest, to be changed one by one.']
    default:
      return [
        'A typical bowler of a level and a style, or your own figures: speeds, revolutions, angles, and how far throws scatter.',
        'Own figures are worth the trouble: which line is best depends on how one misses.',
      ]
  }
}
