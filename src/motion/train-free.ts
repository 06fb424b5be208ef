// Which poses of a train are free: those at which its trailer's own pose is free, and its towing vehicle's.

import { freePoses } from "./free-poses.ts";
import type { FreeMaker } from "./free-poses.ts";
import { layerBase, layerEdge } from "./lattice.ts";
import { angleOf, turnOf } from "./train-lattice.ts";
import type { TrainLattice } from "./train-lattice.ts";
import type { CheckedTrain } from "./trailer-sweep.ts";

/** Makes the free poses of a train, for rectangles shrunk by `deflation` (m). */
export function trainFreeMaker(lattice: TrainLattice, train: CheckedTrain, deflation: number): FreeMaker {
  const { places } = lattice;
  const behind = freePoses(places, train.towed, deflation);
  const ahead = freePoses(places, train.towing, deflation);
  return {
    words: 0,
    begin: () => {},
    lay: (heap, base, layer) => {
      const { heading, level } = angleOf(lattice, layer);
      const own = layerBase(places, heading);
      const towingHeading = (heading + level + places.headings) % places.headings;
      const towing = layerBase(places, towingHeading);
      const off = offsetBits(lattice, heading, level);
      const [whole, part] = [off >> 5, off & 31];
      const { words } = heap;
      const end = places.words;
      for (let word = 0; word < end; word++) {
        const at = word + whole;
        const low = at >= 0 && at < end ? ahead[towing + at]! : 0;
        const high = at + 1 >= 0 && at + 1 < end ? ahead[towing + at + 1]! : 0;
        words[base + word] = behind[own + word]! & ((low >>> part) | ((high << 1) << (31 - part)));
      }
      words.fill(0, base - layerEdge, base);
      words.fill(0, base + end, base + end + layerEdge);
    },
  };
}

/** Bits from a trailer's node to that of its towing vehicle. */
function offsetBits(lattice: TrainLattice, heading: number, level: number): number {
  const { trailer, places } = lattice;
  const own = heading * turnOf(lattice);
  const towing = (heading + level) * turnOf(lattice);
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const x = (T * Math.cos(own) + S * Math.cos(towing)) / places.cell;
  const y = (T * Math.sin(own) + S * Math.sin(towing)) / places.cell;
  return Math.round(y) * places.stride + Math.round(x);
}
