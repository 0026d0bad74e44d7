import { clubBlock } from './block.js'
import { oilSheet } from './oil-sheet.js'
import { ANSA } from './people.js'

export const longChallenge = () =>
  clubBlock({
    title: 'Forty-four feet and a little help',
    purpose: 'Long oil with some shape: the strong balls have their day, as long as the front part of the lane lasts.',
    lanes: [{ name: 'lane 12', passes: oilSheet({ lengthFeet: 44, millilitres: 27, ratio: 4.5 }) }],
  })

export const longFlat = () =>
  clubBlock({
    title: 'Forty-eight feet, oil on every board',
    purpose:
      'Twelve feet of dry lane is all there is. Play straighter than you like and with more surface than you like.',
    lanes: [
      { name: 'lane 12', passes: oilSheet({ lengthFeet: 48, millilitres: 30, ratio: 2, crown: [6, 15], edge: 1 }) },
    ],
  })

export const longHouse = () =>
  clubBlock({
    title: 'The long house lane',
    purpose: 'Walls as at home, but the dry begins five feet later. Strong cover from the start, or a steadier line?',
    lanes: [{ name: 'lane 11', passes: oilSheet({ lengthFeet: 45, millilitres: 26, ratio: 8 }) }],
  })

export const longUnseen = () =>
  clubBlock({
    title: 'Something long',
    purpose:
      'You are told it is long and nothing else. One other bowler is on the lane: watch what her ball tells you.',
    lanes: [
      {
        name: 'lane 11',
        drawn: { lengthFeet: [42, 48], volumeMillilitres: [24, 31], ratio: [1.8, 7], symmetric: 'either' },
      },
    ],
    posted: 'length',
    field: [ANSA],
  })

export const threeGames = () =>
  clubBlock({
    title: 'Three games on one lane',
    purpose:
      'Long enough for the lane to change twice. Decide when to move, when to change balls, and when to leave it alone.',
    lanes: [{ name: 'lane 12', passes: oilSheet({ lengthFeet: 43, millilitres: 25, ratio: 3.5, crown: [7, 14] }) }],
    games: 3,
  })

export const eliteFlat = () =>
  clubBlock({
    title: 'The club master and the flattest lane',
    purpose:
      'A bowler who misses by little, two-handed, on a lane that gives nothing back. Small edges are all there is.',
    lanes: [
      { name: 'lane 12', passes: oilSheet({ lengthFeet: 42, millilitres: 27, ratio: 1.6, crown: [6, 16], edge: 1 }) },
    ],
    bowler: { level: 'elite', hand: 'right', style: 'two-handed' },
  })
