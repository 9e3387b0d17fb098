import { type CalendarEvent, icalendar } from './icalendar';
import type { Week } from './week';
import { jobWords } from './week-words';

/** Shorter waits are no entry in a calendar, s. @commonPractice */
const shortest = 15 * 60;

/**
 * Sittings and waits as iCalendar. For whom something is made stays out of it, since calendars are often kept with somebody else.
 *
 * @param stamp when it is written, s since 1970 in UTC
 */
export function weekCalendar({ sittings, waits, makers }: Week, stamp: number): string {
    const seen = new Map<string, number>();
    const uid = (words: string): string => {
        const hash = hashOf(words);
        const again = seen.get(hash) ?? 0;
        seen.set(hash, again + 1);
        return `${hash}${again === 0 ? '' : `-${again + 1}`}@week.kerfbook`;
    };
    const events: CalendarEvent[] = [
        ...sittings.map(({ hands, start, end, jobs }) => {
            const recipes = [...new Set(jobs.map(({ recipe }) => recipe))].join(', ');
            return {
                uid: uid(`sitting ${hands} ${start} ${jobs.map(({ recipe, title }) => `${recipe} ${title}`).join(' ')}`),
                start,
                end,
                summary: makers > 1 ? `Hands ${hands}: ${recipes}` : recipes,
                description: jobs.map(jobWords).join('\n'),
                transparent: false,
            };
        }),
        ...waits
            .filter(({ start, end }) => end - start >= shortest)
            .map(({ recipe, what, start, end }) => ({
                uid: uid(`wait ${recipe} ${what} ${start}`),
                start,
                end,
                summary: `${recipe}: ${what}`,
                transparent: true,
            })),
    ];
    return icalendar(events, stamp);
}

/** FNV-1a, twice 32 bits: the same words have the same name at each time. */
function hashOf(words: string): string {
    let [low, high] = [0x811c9dc5, 0x811c9dc5 ^ 0x5bd1e995];
    for (let index = 0; index < words.length; index++) {
        const code = words.charCodeAt(index);
        low = Math.imul(low ^ code, 0x01000193);
        high = Math.imul(high ^ (code + index), 0x01000193);
    }
    return [high, low].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}
