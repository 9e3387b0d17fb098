/**
 * A small RS-274/NGC interpreter of the tests' own, written from NISTIR 6556 and from nothing in shared/: it reads a
 * machine file back into moves, and throws at whatever that report would not allow.
 */
export interface Move {
    readonly rapid: boolean;
    readonly x0: number;
    readonly y0: number;
    readonly x1: number;
    readonly y1: number;
    readonly z: number;
    /** mm/min, of feed moves. */
    readonly feed: number;
    /** S in force, 0 while the beam is off by M5. */
    readonly s: number;
    readonly air: boolean;
    /** Stops of the program (M0) since the move before. */
    readonly stops: number;
    /** Comments of the program before it. */
    readonly comments: number;
}

export interface Program {
    readonly moves: readonly Move[];
    readonly comments: readonly string[];
    readonly ended: boolean;
}

const WORD = /([A-Z])([+-]?(?:\d+\.?\d*|\.\d+))/y;

export function readProgram(text: string): Program {
    const moves: Move[] = [];
    const comments: string[] = [];
    const state = { x: 0, y: 0, z: 0, feed: 0, s: 0, beam: false, air: false, motion: Number.NaN, stops: 0, ended: false };
    const modes = { millimetres: false, absolute: false, perMinute: false };
    text.split('\n').forEach((raw, index) => {
        const fail = (why: string): never => {
            throw new Error(`line ${index + 1}: ${why}: ${raw}`);
        };
        if (raw.length > 256) fail('longer than 256 characters');
        if (raw !== '' && state.ended) fail('after the end');
        if (/[^\x20-\x7e]/.test(raw)) fail('not plain characters');
        let line = raw;
        // Files have a hundred thousand lines, nearly all of them without.
        if (raw.includes('('))
            line = raw.replace(/\(([^()]*)\)/g, (_, comment: string) => {
                comments.push(comment);
                return '';
            });
        const axes: { X?: number; Y?: number; Z?: number } = {};
        let moving = false;
        for (const { letter, value } of wordsOf(line.replaceAll(' ', ''), fail)) {
            if (letter === 'F') state.feed = value;
            else if (letter === 'S') state.s = value >= 0 ? value : fail('negative S');
            else if (letter === 'X' || letter === 'Y' || letter === 'Z') {
                axes[letter] = value;
                moving = true;
            } else if (letter === 'G' && (value === 0 || value === 1)) state.motion = value;
            else if (letter === 'G' && value === 21) modes.millimetres = true;
            else if (letter === 'G' && value === 90) modes.absolute = true;
            else if (letter === 'G' && value === 94) modes.perMinute = true;
            else if (letter === 'M' && [3, 4, 5].includes(value)) state.beam = value !== 5;
            else if (letter === 'M' && (value === 7 || value === 9)) state.air = value === 7;
            else if (letter === 'M' && value === 0)
                state.stops += state.beam || state.air ? fail('stops with beam or air on') : 1;
            else if (letter === 'M' && value === 2) state.ended = true;
            else fail(`unknown word ${letter}${value}`);
        }
        if (!moving) return;
        if (!modes.millimetres || !modes.absolute || !modes.perMinute) fail('moves before G21, G90 and G94');
        if (Number.isNaN(state.motion)) fail('moves without G0 or G1');
        if (state.motion === 1 && !(state.feed > 0)) fail('feeds without F');
        const x1 = axes.X ?? state.x;
        const y1 = axes.Y ?? state.y;
        state.z = axes.Z ?? state.z;
        const s = state.beam ? state.s : 0;
        moves.push({
            rapid: state.motion === 0,
            x0: state.x,
            y0: state.y,
            x1,
            y1,
            z: state.z,
            feed: state.feed,
            s,
            air: state.air,
            stops: state.stops,
            comments: comments.length,
        });
        state.stops = 0;
        state.x = x1;
        state.y = y1;
    });
    return { moves, comments, ended: state.ended };
}

interface Word {
    readonly letter: string;
    readonly value: number;
}

function wordsOf(line: string, fail: (why: string) => never): Word[] {
    const words: Word[] = [];
    let at = 0;
    while (at < line.length) {
        WORD.lastIndex = at;
        const match = WORD.exec(line) ?? fail('no word');
        const letter = match[1]!;
        const once = letter !== 'G' && letter !== 'M';
        if (once && words.some((word) => word.letter === letter)) fail(`${letter} twice`);
        words.push({ letter, value: Number(match[2]) });
        at += match[0].length;
    }
    return words;
}
