import { createHash } from 'node:crypto'
import { Ajv } from 'ajv'
import { expect, it } from 'vitest'
import { openPack, packDigest, packFromText } from '../../../src/scenarios/contest/pack/pack.js'
import { openedText, sealText } from '../../../src/scenarios/contest/pack/passphrase.js'
import { readRules } from '../../../src/scenarios/contest/pack/rules-file.js'
import { unsealingFromText, unsealingOf } from '../../../src/scenarios/contest/pack/unsealing.js'
import { contestJsonSchema } from '../../../src/scenarios/files/schema/json-schema.js'
import { canonicalText } from '../../../src/scenarios/store/hashes.js'
import { freshKey, isSignedBy, signatureOf } from '../../../src/scenarios/store/signing.js'
import { fileOf, PASSPHRASE, SEED, sealed } from './contest-for-tests.js'

const { opened, key } = sealed()
const { pack } = opened

it('opens by its passphrase alone, said as it was heard, and holds neither seed nor oil in the open', () => {
  const text = JSON.stringify(pack)
  expect(text).not.toContain(SEED)
  expect(text).not.toMatch(/microlitresPerBoard|passes/)
  expect(openPack('pack', pack, ' LOMU tavi  keso-runa bide ').seed).toBe(SEED)
  expect(() => openPack('pack', pack, 'lomu-tavi-keso-runa-bido')).toThrow(
    'pack: that is not the passphrase of this contest.',
  )
})

// The commitment is a plain hash, made here anew by node:crypto from what the documentation says is in it.
it('commits to seed, lane, rules and model before the seed is known', () => {
  const told = ['dryboard contest 1', pack.contest, pack.rules, pack.scenarioHash, pack.model, SEED]
  expect(pack.commitment).toBe(createHash('sha256').update(canonicalText(told)).digest('hex'))
})

it('is refused where anything of it was changed, or another key signed it anew', () => {
  const other = freshKey()
  const { signature: _signature, ...unsigned } = pack
  const changed: readonly object[] = [
    { ...pack, lane: 'Another' },
    { ...pack, rules: { ...pack.rules, tries: 9 } },
    { ...pack, organiser: other.publicText },
    { ...pack, sealed: { ...pack.sealed, nonce: pack.sealed.salt } },
  ]
  for (const one of changed)
    expect(() => packFromText('p', JSON.stringify(one))).toThrow(/signature: the pack is not as/)
  const resigned = { ...unsigned, organiser: other.publicText }
  const anew = packFromText('p', JSON.stringify({ ...resigned, signature: signatureOf(resigned, other) }))
  expect(packDigest(anew)).not.toBe(opened.digest)
  // A seal moved to another contest does not open there.
  const moved = { ...resigned, contest: '0'.repeat(24) }
  const stolen = packFromText('p', JSON.stringify({ ...moved, signature: signatureOf(moved, other) }))
  expect(() => openPack('p', stolen, PASSPHRASE)).toThrow(/not the passphrase/)
  expect(isSignedBy(unsigned, 'AAAA', pack.organiser)).toBe(false)
})

it('is unsealed by its organiser, with the very seed', () => {
  const unsealing = unsealingOf(opened, '2026-03-08T19:04:11+01:00', key)
  expect(unsealingFromText('u', JSON.stringify(unsealing), pack).seed).toBe(SEED)
  const stranger = unsealingOf(opened, unsealing.unsealedAt, freshKey())
  expect(() => unsealingFromText('u', JSON.stringify(stranger), pack)).toThrow(
    "u signature: it is not the organiser's.",
  )
  const other = unsealingOf({ ...opened, seed: 'cd'.repeat(32) }, unsealing.unsealedAt, key)
  expect(() => unsealingFromText('u', JSON.stringify(other), pack)).toThrow(/not the one that was committed to/)
})

it('seals the same text otherwise each time', () => {
  const [one, two] = [sealText('oil', 'word', 'here'), sealText('oil', 'word', 'here')]
  expect(one.text).not.toBe(two.text)
  expect([openedText(one, 'word', 'here'), openedText(one, 'word', 'there')]).toEqual(['oil', null])
})

// Ajv is an independent reader of JSON Schema; what the loader takes, the published schema must take.
it('has schemas with words to every field that accept what the loader accepts', () => {
  const ajv = new Ajv({ strict: false })
  expect(ajv.validate(contestJsonSchema('pack'), JSON.parse(JSON.stringify(pack)))).toBe(true)
  const { rules } = pack
  expect(
    ajv.validate(
      contestJsonSchema('rules'),
      JSON.parse(JSON.stringify({ version: 1, scenario: 'house-forty', ...rules })),
    ),
  ).toBe(true)
  expect(ajv.validate(contestJsonSchema('rules'), { version: 1, scenario: 'house-forty', title: 'x' })).toBe(false)
  const { properties } = contestJsonSchema('rules') as { properties: Record<string, { description?: string }> }
  const silent = Object.entries(properties).filter(([name, { description }]) => name !== '$schema' && !description)
  expect(silent.map(([name]) => name)).toEqual([])
})

it('names what is wrong with rules, with line and field', async () => {
  const path = fileOf(
    'rules.yaml',
    'version: 1\ntitle: Autumn\nscenario: house-forty\nranking: costs\ndeadline: tomorrow\n',
  )
  await expect(readRules(path)).rejects.toThrow(
    /rules\.yaml:4:10 ranking: found "costs"; allowed is one of luck-adjusted, cost, score\.\n.*rules\.yaml:5:11 deadline: found "tomorrow"; allowed is a local time/,
  )
  const both =
    'version: 1\ntitle: A\nscenario: house-forty\nranking: cost\nhandicap: { base: 220, percent: 90 }\ndeadline: "2026-12-01T22:00:00+01:00"\n'
  await expect(readRules(fileOf('both.yaml', both))).rejects.toThrow(/handicap: A handicap is added to a score/)
  const far = 'version: 1\ntitle: A\nscenario: no-such\ndeadline: "2026-12-01T22:00:00+01:00"\n'
  await expect(readRules(fileOf('far.yaml', far))).rejects.toThrow(/no-such/)
})
