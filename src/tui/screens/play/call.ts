import { CALL_CONFIDENCES, CALL_CONTACTS, type Call } from '../../../scenarios/store/block-notes.js'
import { CONTACT_WORDS } from '../../../scenarios/words/words.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'

/** The open call: every reaction and every confidence, the chosen ones between two marks. */
export function callRows(call: Call, theme: Theme): string[] {
  const { left, right } = theme.glyphs
  const choices = <Value extends string | number>(values: readonly Value[], chosen: Value, unit: string) =>
    values.map((value) =>
      value === chosen
        ? ([`${left}${value}${unit}${right} `, 'accent'] as const)
        : ([` ${value}${unit}  `, 'plain'] as const),
    )
  return [
    textRow(
      theme,
      ['Call the reaction', 'strong'],
      ['  how the ball will meet the rack, and how sure you are', 'faint'],
    ),
    '',
    textRow(theme, ['Reaction  ', 'faint'], ...choices(CALL_CONTACTS, call.contact, '')),
    textRow(theme, ['How sure  ', 'faint'], ...choices(CALL_CONFIDENCES, call.confidencePercent, ' %')),
    '',
    textRow(theme, [
      `You say it will be ${CONTACT_WORDS[call.contact]}. The debrief tells how good your calls were.`,
      'faint',
    ]),
  ]
}
