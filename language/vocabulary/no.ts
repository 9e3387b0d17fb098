import type { AstNode } from 'langium';
import { isWithout } from '../generated/ast';

/** Lines of which `without` says that there is none of it, in any recipe. Of the others only a variant can leave one out, to have it worked out. */
const canBeNone: ReadonlySet<string> = new Set([
    'air',
    'backing',
    'clearance',
    'curve',
    'dither',
    'glue',
    'kerf',
    'lead-in',
    'marks',
    'mirror',
    'offset',
    'outline',
    'overfill',
    'tabs',
]);

/** Whether `without` and this word say that there is none of it, also where there is no base. */
export function canSayNo(word: string): boolean {
    return canBeNone.has(word);
}

/** Whether a line says that there is none of what bears that key, of anything where none is given. */
export function saysNo(line: AstNode, key?: string): boolean {
    if (!isWithout(line) || line.key === undefined) return false;
    return key === undefined ? canBeNone.has(line.key) : line.key === key;
}
