/** Whether a written date is a day that there is: `2026-02-30` is none. */
export function isDay(text: string): boolean {
    const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text) ?? [];
    const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
    return date.getUTCMonth() === Number(month) - 1 && date.getUTCDate() === Number(day);
}

/** The day that was meant by one written with single digits. */
export function likelyDay(text: string): string | undefined {
    const meant = text.replaceAll(/-(\d)(?=-|$)/g, '-0$1');
    return meant !== text && isDay(meant) ? meant : undefined;
}
