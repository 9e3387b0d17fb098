/**
 * What leaves as iCalendar, read back by the rules of RFC 5545 (3.1 seen; 3.3.5 and 3.6.1 seen in a library's notes, 3.3.11 in a guide; 3.6 from memory): 3.1 content lines of at most 75 octets, ended by CRLF, folded by CRLF
 * and one space; 3.3.11 text with backslash, semicolon, comma and line ends escaped; 3.3.5 date-times without a zone; 3.6 a
 * calendar needs PRODID and VERSION; 3.6.1 an event needs UID and DTSTAMP, and DTEND is later than DTSTART.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { momentOf } from '../../shared/quantity/calendar';
import { type CalendarEvent, icalendar } from '../../shared/week/icalendar';

const stamp = 1_780_000_000;
const event: CalendarEvent = {
    uid: 'a@week.kerfbook',
    start: momentOf('2026-12-01T08:00')!,
    end: momentOf('2026-12-01T09:30')!,
    summary: 'tray',
    transparent: false,
};

interface Line {
    readonly name: string;
    readonly value: string;
}

/** The reading rules, apart from how they are written. */
function read(file: string): Line[] {
    const bytes = new TextEncoder().encode(file);
    expect(file.endsWith('\r\n')).toBe(true);
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    let length = 0;
    for (const byte of bytes) {
        if (byte === 0x0a) length = 0;
        else if (byte !== 0x0d) length++;
        expect(length).toBeLessThanOrEqual(75);
    }
    return file
        .replaceAll(/\r\n[ \t]/g, '')
        .trimEnd()
        .split('\r\n')
        .map((line) => {
            const [, name, value] = /^([A-Z-]+):(.*)$/u.exec(line) ?? [];
            expect(name).toBeDefined();
            return { name: name!, value: value! };
        });
}

const textOf = (value: string): string =>
    value.replaceAll(/\\([\\;,nN])/g, (_, letter: string) => (/n/i.test(letter) ? '\n' : letter));

describe('iCalendar', () => {
    it('has what a calendar and an event need, once', () => {
        const names = read(icalendar([event], stamp)).map(({ name, value }) =>
            /^(BEGIN|END)$/.test(name) ? `${name}:${value}` : name,
        );
        expect(names).toEqual([
            'BEGIN:VCALENDAR',
            'VERSION',
            'PRODID',
            'CALSCALE',
            'BEGIN:VEVENT',
            'UID',
            'DTSTAMP',
            'DTSTART',
            'DTEND',
            'SUMMARY',
            'TRANSP',
            'END:VEVENT',
            'END:VCALENDAR',
        ]);
    });
    it('writes times of the wall without a zone, the stamp in UTC', () => {
        const lines = new Map(read(icalendar([event], stamp)).map(({ name, value }) => [name, value]));
        expect([lines.get('DTSTART'), lines.get('DTEND')]).toEqual(['20261201T080000', '20261201T093000']);
        expect(lines.get('DTSTAMP')).toMatch(/^\d{8}T\d{6}Z$/);
    });
    it('an event without a length ends later than it begins', () => {
        const lines = new Map(read(icalendar([{ ...event, end: event.start }], stamp)).map(({ name, value }) => [name, value]));
        expect(lines.get('DTEND')! > lines.get('DTSTART')!).toBe(true);
    });
    it('keeps text as it is, whatever stands in it, on lines of 75 octets', () => {
        const odd = fc.string({ unit: 'grapheme', maxLength: 200, size: 'max' });
        const ended = fc.array(fc.constantFrom('a;b', 'c,d', 'e\\f', 'g\nh', 'ä', '木', '🪵', ' ', '"', ':'), {
            maxLength: 90,
            size: 'max',
        });
        fc.assert(
            fc.property(
                fc.oneof(
                    odd,
                    ended.map((parts) => parts.join('')),
                ),
                (words) => {
                    const lines = read(icalendar([{ ...event, summary: words, description: words }], stamp));
                    const plain = words.replaceAll(/\r\n?|[\u2028\u2029]/g, '\n').replaceAll(/(?![\t\n])\p{Cc}/gu, ' ');
                    for (const name of ['SUMMARY', 'DESCRIPTION'])
                        expect(textOf(lines.find((line) => line.name === name)!.value)).toBe(plain);
                    expect(lines.filter(({ name }) => name === 'BEGIN')).toHaveLength(2);
                },
            ),
            { numRuns: 300 },
        );
    });
    it('words cannot add a line of their own', () => {
        const lines = read(icalendar([{ ...event, summary: 'x\r\nEND:VCALENDAR\nATTACH:file' }], stamp));
        expect(lines.filter(({ name, value }) => name === 'END' && value === 'VCALENDAR')).toHaveLength(1);
        expect(lines.some(({ name }) => name === 'ATTACH')).toBe(false);
    });
});
