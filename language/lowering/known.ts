import type { Grade } from '../../shared/quantity/where';
import { builtInText, isBuiltIn } from '../built-in';
import { gradeInFindings, stockLines } from '../stock-sources';

/** Of a built-in file, the lines (from 0) whose grade findings have to say. The files stay. */
const graded = new Map<string, ReadonlyMap<number, Grade>>();

/** How a line of the built-in stock is known; undefined where a source was read for it, and in any other file. */
export function gradeAt(uri: string, line: number): Grade | undefined {
    if (!isBuiltIn(uri)) return undefined;
    let of = graded.get(uri);
    if (of === undefined) {
        const lines = stockLines([{ path: uri, text: builtInText(uri) ?? '' }]);
        of = new Map(
            lines.flatMap((each): [number, Grade][] => {
                const grade = gradeInFindings(each);
                return grade === undefined ? [] : [[Number(each.place.slice(uri.length + 1)) - 1, grade]];
            }),
        );
        graded.set(uri, of);
    }
    return of.get(line);
}
