import { AstUtils, isReference } from 'langium';
import { CodeActionKind } from 'vscode-languageserver';
import { phrase } from '../../../shared/recipe/phrase';
import { isBuiltIn } from '../../built-in';
import { isCoat, isGlue, isKind, isRecipe, isResin, isSealer } from '../../generated/ast';
import { constructOf } from '../../vocabulary/constructs';
import { Layout } from '../layout';
import type { Refactor, RefactorPlace } from './refactor';

/** Built-in stock that a step names becomes stock of one's own, like it in all that is not written otherwise. */
export function ownStock({ document, offset, services }: RefactorPlace): Refactor[] {
    const reference = document.references.find(
        ({ $refNode }) => $refNode !== undefined && $refNode.offset <= offset && offset <= $refNode.end,
    );
    const target = isReference(reference) ? reference.ref : undefined;
    const at = reference?.$refNode;
    if (at === undefined || target === undefined || isKind(at.astNode)) return [];
    if (!(isResin(target) || isSealer(target) || isGlue(target) || isCoat(target))) return [];
    const recipe = AstUtils.getContainerOfType(at.astNode, isRecipe);
    const start = recipe?.$cstNode?.offset;
    if (start === undefined || !isBuiltIn(AstUtils.getDocument(target).uri.toString())) return [];
    const word = constructOf(target.$type)?.word ?? '';
    const text = document.textDocument.getText();
    const { lineBreak, indent } = new Layout(text);
    const name = freeName(`shop-${target.name}`, text);
    const block = `${word} ${name} {${lineBreak}${indent}kind ${target.name}${lineBreak}}${lineBreak}${lineBreak}`;
    const edits = [
        { offset: start, length: 0, text: block },
        { offset: at.offset, length: at.length, text: name },
    ];
    const uri = document.uri.toString();
    if (services.shared.workspace.LangiumDocuments.getDocument(document.uri) !== document) return [];
    return [
        {
            title: phrase`Make it ${word} of the shop, like ${target.name}`,
            kind: CodeActionKind.RefactorExtract,
            edits: new Map([[uri, edits]]),
        },
    ];
}

function freeName(wanted: string, text: string): string {
    let name = wanted;
    for (let next = 2; text.includes(name); next++) name = `${wanted}-${next}`;
    return name;
}
