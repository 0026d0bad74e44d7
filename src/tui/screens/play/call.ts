import { CALL_CONFIDENCES, CALL_CONTACTS, type Call } from '../../../scenarios/store/block-notes.js'
import { contactWords, shortContact } from '../../../scenarios/words/throw-words.js'
import type { Hand } from '../../../sim/world/bowler/profile.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'

/** The open call: every reaction and every confidence, the chosen ones between two marks. */
export function callRows(call: Call, hand: Hand, theme: Theme): string[] {
  const { left, right } = theme.glyphs
  const choices = <Value extends string | number>(
    values: readonly Value[],
    chosen: Value,
    told: (value: Value) => string,
  ) =>
    values.map((value) =>
      value === chosen
        ? ([`${left}${told(value)}${right} `, 'accent'] as const)
        : ([` ${told(value)}  `, 'plain'] as const),
    )
  return [
    textRow(
      theme,
      ['Call the reaction', 'strong'],
      ['  how the ball will meet the rack, and how sure you are', 'faint'],
    ),
    '',
    textRow(
      theme,
      ['Reaction  ', 'faint'],
      ...choices(CALL_CONTACTS, call.contact, (contact) => shortContact(contact, hand)),
    ),
    textRow(
      theme,
      ['How sure  ', 'faint'],
      ...choices(CALL_CONFIDENCES, call.confidencePercent, (percent) => `${percent} %`),
    ),
    '',
    textRow(theme, [
      `You say it will be ${contactWords(call.contact, hand)}. The debrief tells how good your calls were.`,
      'faint',
    ]),
  ]
}
