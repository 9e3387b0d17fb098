import type { RoundView } from '../../../../shared/view/round-view';

/** Heights drawn so many times as high as they are, down to the deepest floor; what is below that keeps its thickness. */
export function heightsOf({ surfaces, thickness }: RoundView, times: number): (z: number) => number {
    const tops = surfaces.flatMap(({ z, down }) => (down === true || z <= 0 ? [] : [z]));
    const lowest = Math.min(thickness, ...tops);
    return (z) => (z <= lowest ? z : lowest + (z - lowest) * times);
}
