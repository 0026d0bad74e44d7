import type { ScenarioInput } from '../files/schema/scenario.js'

type Field = NonNullable<ScenarioInput['field']>

/** Players whose ball turns less, and more, than the rules of thumb are made for. */
export const STROKER = { level: '200', hand: 'right', style: 'stroker' } as const
export const CRANKER = { level: '200', hand: 'right', style: 'cranker' } as const

/** The members of the club at Quillmoor, all invented, with the line each of them starts on. */
export const ANSA: Field[number] = {
  name: 'Ansa',
  hand: 'right',
  style: 'tweener',
  level: '200',
  ball: 'symmetric-solid',
  feet: 24,
  target: 13,
}
export const BRONO: Field[number] = {
  name: 'Brono',
  hand: 'right',
  style: 'cranker',
  level: '180',
  ball: 'sanded-asymmetric',
  feet: 28,
  target: 15,
}
export const CILLE: Field[number] = {
  name: 'Cille',
  hand: 'left',
  style: 'stroker',
  level: '200',
  ball: 'asymmetric-hybrid',
  feet: 23,
  target: 12,
}
export const DARRO: Field[number] = {
  name: 'Darro',
  hand: 'right',
  style: 'two-handed',
  level: '220',
  ball: 'sanded-asymmetric',
  feet: 34,
  target: 18,
}
export const ELMI: Field[number] = {
  name: 'Elmi',
  hand: 'right',
  style: 'stroker',
  level: '180',
  ball: 'urethane',
  feet: 20,
  target: 10,
}
export const FENJA: Field[number] = {
  name: 'Fenja',
  hand: 'right',
  style: 'stroker',
  level: '160',
  ball: 'plastic-spare',
  feet: 18,
  target: 12,
}
export const GIRRO: Field[number] = {
  name: 'Girro',
  hand: 'left',
  style: 'cranker',
  level: '200',
  ball: 'sanded-asymmetric',
  feet: 28,
  target: 15,
}
