import { isoMoment } from '../quantity/calendar';
import { rackName } from '../recipe/stock';
import { type Week, weekSchema } from './week';

/** The book as plain JSON: moments as ISO 8601 on the wall, all else in base units. */
export function weekJson(week: Week) {
    return {
        schema: weekSchema,
        start: isoMoment(week.start),
        makers: week.makers,
        workday: week.workday ?? null,
        closed: week.closed,
        ready: isoMoment(week.ready),
        least: { ready: isoMoment(week.least.ready), by: week.least.by },
        gap: week.gap,
        leastLate: week.leastLate,
        attended: week.attended,
        attendedApart: week.attendedApart,
        coarse: week.coarse,
        unknown: week.unknown,
        loads: week.loads.map(({ laser, busy, share }) => ({ laser: laser ?? null, busy, share: share ?? null })),
        orders: week.orders.map(({ ready, ...order }) => ({ ...order, ready: isoMoment(ready) })),
        sittings: week.sittings.map(({ start, end, jobs, ...sitting }) => ({
            ...sitting,
            start: isoMoment(start),
            end: isoMoment(end),
            jobs: jobs.map((job) => ({ ...job, start: isoMoment(job.start) })),
        })),
        waits: week.waits.map(({ start, end, ...wait }) => ({ ...wait, start: isoMoment(start), end: isoMoment(end) })),
        cuttings: week.cuttings.map(({ sheet, size, yielded, consumed, offcuts }) => ({
            of: rackName(sheet),
            size,
            sheets: yielded.sheets,
            used: yielded.used,
            consumed,
            scaled: yielded.scaled,
            tooLarge: yielded.tooLarge,
            layout: yielded.layout,
            offcuts,
        })),
        shopping: week.shopping.map(({ onHand, cost, ...line }) => ({ ...line, onHand: onHand ?? null, cost: cost ?? null })),
        currency: week.currency ?? null,
    };
}
