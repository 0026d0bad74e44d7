import { noNotes } from '../../scenarios/store/block-notes.js'
import type { JoinedBlock } from '../../scenarios/store/joined-block.js'
import type { PlayedBlock } from '../../scenarios/store/keeper.js'
import type { TrainerServices } from '../state/services.js'

/** A block whose lane a host has, as the screen plays it on. */
export function playedElsewhere({ scenario, states, title }: JoinedBlock): PlayedBlock {
  return { scenario, states, notes: noNotes('test'), recordPath: null, contest: title }
}

/** The trainer's services where a host throws and keeps: nothing of the block is put on this machine's disk. */
export function hostedServices(services: TrainerServices, { throwNext }: JoinedBlock): TrainerServices {
  return {
    ...services,
    throwElsewhere: throwNext,
    keepThrow: async () => {},
    keepSaid: async () => {},
    file: async () => '',
    keepWorked: async () => {},
    pinFall: (block, index) => ({ standing: block.throws[index]!.standingAfter, pictures: [] }),
  }
}
