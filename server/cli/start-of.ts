import { momentOf } from '../../shared/quantity/calendar';
import { UsageError } from './usage-error';

/** `--start`: when the work begins; without it the run is told in days from its start. */
export function startOf(written: string | undefined): { readonly start?: number } {
    if (written === undefined) return {};
    const start = momentOf(written);
    if (start === undefined)
        throw new UsageError('--start is a date, or a date and a time, such as 2026-11-26 or 2026-11-26T08:00.');
    return { start };
}
