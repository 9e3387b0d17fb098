/** An event of a calendar, by the clock on the wall: times without a zone mean the time wherever one is (RFC 5545, 3.3.5, form 1). */
export interface CalendarEvent {
    /** The same for the same event at each time that it is written. */
    readonly uid: string;
    /** Moments of quantity/calendar. */
    readonly start: number;
    readonly end: number;
    readonly summary: string;
    readonly description?: string;
    /** Whether it leaves one free for other things. */
    readonly transparent: boolean;
}

/** Longest line, octets, without its end (RFC 5545, 3.1). */
const maxOctets = 75;

/**
 * Events as an iCalendar file (RFC 5545): lines end by CRLF and are folded at 75 octets, text is escaped.
 *
 * @param stamp when it is written, s since 1970 in UTC
 */
export function icalendar(events: readonly CalendarEvent[], stamp: number): string {
    const lines = [
        'BEGIN:VCALENDAR',
        'VERSION:2.0',
        'PRODID:-//Kerfbook//Week//EN',
        'CALSCALE:GREGORIAN',
        ...events.flatMap(({ uid, start, end, summary, description, transparent }) => [
            'BEGIN:VEVENT',
            `UID:${escapeText(uid)}`,
            `DTSTAMP:${dateTime(stamp)}Z`,
            `DTSTART:${dateTime(start)}`,
            `DTEND:${dateTime(Math.max(end, start + 1))}`,
            `SUMMARY:${escapeText(summary)}`,
            ...(description === undefined ? [] : [`DESCRIPTION:${escapeText(description)}`]),
            `TRANSP:${transparent ? 'TRANSPARENT' : 'OPAQUE'}`,
            'END:VEVENT',
        ]),
        'END:VCALENDAR',
    ];
    return lines.map((line) => `${fold(line)}\r\n`).join('');
}

/** Backslash, semicolon, comma and line ends (3.3.11); control characters but the tab may not stand in text. */
function escapeText(text: string): string {
    return text
        .replaceAll(/\r\n?|[\u2028\u2029]/g, '\n')
        .replaceAll(/(?![\t\n])\p{Cc}/gu, ' ')
        .replaceAll(/[\\;,]/g, '\\$&')
        .replaceAll('\n', '\\n');
}

/** Never within a character. What goes on begins with a space, which counts. */
function fold(line: string): string {
    let folded = '';
    let octets = 0;
    for (const character of line) {
        const length = octetsOf(character.codePointAt(0)!);
        if (octets + length > maxOctets) {
            folded += '\r\n ';
            octets = 1;
        }
        folded += character;
        octets += length;
    }
    return folded;
}

/** Octets of a character in UTF-8. */
function octetsOf(code: number): number {
    if (code < 0x80) return 1;
    if (code < 0x800) return 2;
    return code < 0x10000 ? 3 : 4;
}

/** "20261201T080000". */
function dateTime(moment: number): string {
    return new Date(Math.round(moment) * 1000).toISOString().slice(0, 19).replaceAll(/[-:]/g, '');
}
