import type { OilFilm } from '../../../sim/world/lane/film.js'

/** What has gone from a film since an earlier one, cell by cell; cells that gained oil show as none. */
export function filmGone(before: OilFilm, now: OilFilm): OilFilm {
  return { microns: now.microns.map((microns, cell) => Math.max(0, before.microns[cell]! - microns)) }
}
