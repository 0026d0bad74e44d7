import { describe, expect, it } from 'vitest'
import { waitingDrill } from '../../../src/scenarios/drills/waiting-drill.js'
import type { PastBlock } from '../../../src/scenarios/store/past-blocks.js'
import type { SkillHistory } from '../../../src/scenarios/store/remembered.js'
import { SKILLS } from '../../../src/sim/analysis/debrief/findings/skills.js'

const block = (about: Partial<PastBlock> = {}): PastBlock => ({
  path: '',
  name: '',
  title: '',
  seed: '',
  bowledAt: new Date(0),
  throws: 20,
  games: [150],
  frames: 10,
  isOwn: true,
  kind: 'block' as const,
  ...about,
})
const costing = (skill: SkillHistory['skill'], mean: number): SkillHistory => ({ skill, costs: [mean], mean })

describe('the drill that waits', () => {
  it('is on the skill that cost most, until a drill is played after the last block', () => {
    const skills = [costing('line', 4), costing('ball', 6)]
    const waiting = { skill: 'ball', name: 'library:ball', answered: 0 }
    expect(waitingDrill({ skills }, [block()])).toEqual(waiting)
    const drilled = block({ kind: 'drill' })
    expect(waitingDrill({ skills }, [drilled, block()])).toBeNull()
    expect(waitingDrill({ skills }, [block(), drilled, drilled])).toEqual({ ...waiting, answered: 2 })
    // Whatever somebody else has played in the same folder.
    expect(waitingDrill({ skills }, [block({ kind: 'drill', isOwn: false }), block()])).toEqual(waiting)
  })

  it('is none where nothing costs enough to name, or the library has none on it', () => {
    expect(waitingDrill({ skills: [] }, [block()])).toBeNull()
    expect(waitingDrill({ skills: [costing('line', 0.29)] }, [block()])).toBeNull()
    expect(waitingDrill({ skills: [costing('speed', 5), costing('line', 4)] }, [block()])).toBeNull()
    const named = SKILLS.filter((skill) => waitingDrill({ skills: [costing(skill, 5)] }, [block()]) !== null)
    expect(named).toEqual(['ball', 'line', 'timing of moves', 'size of moves', 'throw or lane', 'spares'])
  })
})
