import { partitionPoint } from '../../../../shared/quantity/partition-point';
import { showTime } from '../../../../shared/quantity/show';
import type { ToolpathView, WayView } from '../../../../shared/view/toolpath-view';

export interface Moment {
    /** The time and what the head is at, such as "3 min of 24 min: pocket, pass 2 of 3". */
    readonly words: string;
    /** For each work how many places of its pass have been come by: all of them once a pass is done. */
    readonly places: readonly number[];
    /** Where the head is, mm; absent before the first work. */
    readonly head?: { readonly x: number; readonly y: number };
}

/** How far the head has come at a time (s). */
export function momentAt({ works, total }: ToolpathView, time: number): Moment {
    let doing = '';
    let head: Moment['head'];
    const places = works.map((work) => {
        const since = time - work.start;
        if (since < 0) return 0;
        const round = work.pass + work.back;
        const pass = round > 0 ? Math.min(Math.floor(since / round), work.passes - 1) : 0;
        doing = `: ${work.name}${work.passes > 1 ? `, pass ${pass + 1} of ${work.passes}` : ''}`;
        const within = since - pass * round;
        const come = comeBy(work, within);
        const at = 3 * Math.max(0, come - 1);
        if (work.lit.length > 0) head = { x: work.points[at]!, y: work.points[at + 1]! };
        return pass > 0 ? work.lit.length : come;
    });
    return {
        words: `${showTime(time)} of ${showTime(total)}${time >= total ? '' : doing}`,
        places,
        ...(head === undefined ? {} : { head }),
    };
}

/** How many places lie before a time in the pass. */
function comeBy({ points, lit }: WayView, time: number): number {
    return partitionPoint(lit.length, (index) => points[3 * index + 2]! <= time);
}
