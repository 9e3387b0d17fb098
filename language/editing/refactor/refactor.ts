import type { AstNode, LangiumDocument } from 'langium';
import type { CodeActionKind } from 'vscode-languageserver';
import type { Message } from '../../../shared/recipe/phrase';
import type { KerfServices } from '../../services';
import type { SpanEdit } from '../text-edits';

/** A change that somebody may want though nothing is wrong. */
export interface Refactor {
    readonly title: Message;
    readonly kind: CodeActionKind;
    /** By the address of the file. */
    readonly edits: ReadonlyMap<string, readonly SpanEdit[]>;
    /** Files that are made for it, with what they begin with. */
    readonly files?: ReadonlyMap<string, string>;
}

/** Where refactors are asked for: the innermost node at the cursor, in its linked document. */
export interface RefactorPlace {
    readonly document: LangiumDocument;
    readonly node: AstNode;
    readonly offset: number;
    readonly services: KerfServices;
    /** Whether the editor can make a file. */
    readonly createsFiles: boolean;
}
