const minute = 60;
const day = 86_400;
const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/**
 * A moment as clocks and calendars on the wall show it, in s since 1970-01-01T00:00 on the same wall. It
 * knows no time zone, so a run over a change of the clocks is told an hour off. Written as in ISO 8601:
 * `2026-11-26` or `2026-11-26T08:15`; undefined for anything else, such as the 30th of February.
 */
export function momentOf(text: string): number | undefined {
    const found = /^(\d{4})-(\d\d)-(\d\d)(?:[T ](\d\d):(\d\d)(?::\d\d(?:\.\d+)?)?)?$/.exec(text.trim());
    if (found === null) return undefined;
    const [year, month, date, hours, minutes] = found.slice(1).map((part) => Number(part ?? 0)) as [
        number,
        number,
        number,
        number,
        number,
    ];
    const at = new Date(Date.UTC(year, month - 1, date, hours, minutes));
    // What is too much for its place would go on into the next one.
    const isSame =
        at.getUTCFullYear() === year && at.getUTCMonth() === month - 1 && at.getUTCDate() === date && hours < 24 && minutes < 60;
    return isSame ? at.getTime() / 1000 : undefined;
}

/** Days since 1970 of a date as it is written; undefined for what is not a date. */
export function daysSince1970(date: string): number | undefined {
    const moment = momentOf(date);
    return moment === undefined ? undefined : moment / day;
}

/** As ISO 8601, to the minute and without a zone. */
export function isoMoment(moment: number): string {
    const at = new Date(moment * 1000);
    return Number.isNaN(at.getTime()) ? '' : at.toISOString().slice(0, 16);
}

/**
 * When something happens: a date and the time on the clock where the start of the work is known, else the
 * day of the work and how long it has gone on, such as "day 2, 0:15".
 *
 * @param elapsed s from the start of the work, at the beginning of its first working day
 * @param start a moment
 */
export function showWhen(elapsed: number, start?: number): string {
    if (start === undefined) return `day ${dayOfWork(elapsed)}, ${clock(elapsed % day)}`;
    const at = new Date((start + elapsed) * 1000);
    if (Number.isNaN(at.getTime())) return 'never';
    const time = `${String(at.getUTCHours()).padStart(2, '0')}:${String(at.getUTCMinutes()).padStart(2, '0')}`;
    return `${weekdays[at.getUTCDay()]} ${at.getUTCDate()} ${months[at.getUTCMonth()]} ${at.getUTCFullYear()}, ${time}`;
}

/** Which day of the work it is, from 1, so many seconds after its beginning. */
export function dayOfWork(elapsed: number): number {
    return Math.floor(elapsed / day) + 1;
}

/** Hours and minutes, rounded up to the minute: "0:15". */
function clock(seconds: number): string {
    const minutes = Math.ceil(seconds / minute - 1e-6);
    return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}

/** A day as a run has it, by the clock on the wall. */
export function dayOf(date: Date): string {
    const two = (value: number): string => String(value).padStart(2, '0');
    return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
