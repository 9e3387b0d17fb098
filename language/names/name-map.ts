import type { AstNode, AstNodeDescription } from 'langium';
import { KeptOn } from '../../shared/plan/kept';
import { type File, isCut, isEngrave, isLot, isWas, type Recipe, type Routine, type Sheet } from '../generated/ast';
import { membersOf } from '../variants/members';

type Describe = (node: AstNode, name: string) => AstNodeDescription;

/** Names of one block, each with all that bears it: kinds have namespaces of their own, and doubles are reported. */
export type NameMap = ReadonlyMap<string, readonly AstNodeDescription[]>;

const maps = new KeptOn<AstNode, NameMap>();

/** What a file declares: stock and recipes. Lives as long as the parsed tree it was read from. */
export function namesOfFile(file: File, describe: Describe): NameMap {
    return namesOf(file, () => file.entries, describe);
}

/** What a recipe declares: its art, blanks and named steps, those too that a variant puts between the base's. */
export function namesOfRecipe(recipe: Recipe, describe: Describe): NameMap {
    return namesOf(recipe, membersOf, describe, formerNames);
}

/** The lots of a board or veneer. */
export function namesOfSheet(sheet: Sheet, describe: Describe): NameMap {
    return namesOf(sheet, ({ items }) => items.filter(isLot), describe);
}

/** What a routine declares: the piece that stands for a blank. */
export function namesOfRoutine(routine: Routine, describe: Describe): NameMap {
    return namesOf(routine, ({ piece }) => (piece === undefined ? [] : [piece]), describe);
}

/** What a step was called before (`was`). */
function formerNames(member: AstNode): readonly string[] {
    if (!isEngrave(member) && !isCut(member)) return [];
    return (member.items as readonly AstNode[]).filter(isWas).flatMap(({ names }) => names);
}

function namesOf<Owner extends AstNode>(
    owner: Owner,
    members: (owner: Owner) => readonly AstNode[],
    describe: Describe,
    more: (member: AstNode) => readonly string[] = () => [],
): NameMap {
    let map = maps.get(owner);
    if (map === undefined) {
        const built = new Map<string, AstNodeDescription[]>();
        for (const member of members(owner)) {
            const name = (member as { name?: unknown }).name;
            if (typeof name !== 'string' || name === '') continue;
            const bearers = built.get(name);
            if (bearers === undefined) built.set(name, [describe(member, name)]);
            else bearers.push(describe(member, name));
        }
        // What a thing was called before still leads to it where nothing bears the name now.
        for (const member of members(owner)) {
            for (const name of more(member)) if (!built.has(name)) built.set(name, [describe(member, name)]);
        }
        map = built;
        maps.set(owner, map);
    }
    return map;
}
