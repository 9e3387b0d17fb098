import { type AstNode, AstUtils, type LangiumDocument } from 'langium';
import * as ast from '../generated/ast';
import type { KerfServices } from '../services';
import { basesOf } from '../variants/lineage';
import { membersOf } from '../variants/members';
import { isCalled } from './called-steps';

/** Kinds that share one set of names. */
const together: Readonly<Record<string, string>> = { Board: 'Sheet', Veneer: 'Sheet', Engrave: 'Carved', Cut: 'Carved' };

/** Things of one set may not have the same name: blanks of a recipe, boards and veneers of a file. */
export function setOfNames({ $type }: AstNode): string {
    return together[$type] ?? $type;
}

/**
 * What bears a name already, seen from everywhere that a thing can be seen from: were the thing called so, somebody would
 * mean the other one. Undefined where the name is free.
 */
export function bearerOf(name: string, thing: AstNode, services: KerfServices): AstNode | undefined {
    const recipe = ast.isRecipe(thing) ? undefined : AstUtils.getContainerOfType(thing, ast.isRecipe);
    const others = recipe === undefined ? besideStock(thing, services) : besidePart(recipe, services);
    const set = setOfNames(thing);
    return others.find((other) => other !== thing && setOfNames(other) === set && nameOf(other) === name);
}

function nameOf(node: AstNode): string | undefined {
    return isCalled(node) ? node.called : (node as { name?: string }).name;
}

/** The parts of a recipe, of those it is based on, and of those based on it. */
function besidePart(recipe: ast.Recipe, services: KerfServices): AstNode[] {
    const variants = entriesOf(allDocuments(services))
        .filter(ast.isRecipe)
        .filter((other) => basesOf(other).includes(recipe));
    return [recipe, ...basesOf(recipe), ...variants].flatMap(membersOf);
}

/** What stands in the same file, in those it uses, and in every file that sees it with what that one sees besides. */
function besideStock(thing: AstNode, services: KerfServices): AstNode[] {
    const home = AstUtils.getDocument(thing);
    const seenFrom = (document: LangiumDocument) => [
        document,
        ...services.names.UsedFiles.of(document).flatMap((used) => used.document ?? []),
    ];
    const views = allDocuments(services).map(seenFrom);
    return entriesOf([...new Set(views.filter((view) => view.includes(home)).flat())]);
}

function allDocuments({ shared }: KerfServices): LangiumDocument[] {
    return shared.workspace.LangiumDocuments.all.toArray();
}

function entriesOf(documents: readonly LangiumDocument[]): ast.Entry[] {
    return documents.flatMap(({ parseResult }) => (ast.isFile(parseResult.value) ? parseResult.value.entries : []));
}
