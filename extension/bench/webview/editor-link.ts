import type { Where } from '../../../shared/quantity/where';
import type { FromBench } from '../messages';

interface EditorApi {
    postMessage(message: FromBench): void;
    getState(): unknown;
    setState(state: object): void;
}

declare function acquireVsCodeApi(): EditorApi;

/** The one way out of the page. */
export const editor = acquireVsCodeApi();

/** Asks for a number to be written in the place of another, in the text that the picture is of. */
export function write(where: Where, textVersion: number, text: string): void {
    editor.postMessage({ type: 'write', where, textVersion, text });
}

/**
 * Shows a place of the text. A click leaves the keyboard in the bench view; a double click, Enter
 * and Space (which come as clicks without a count) go over into the text.
 */
export function reveal(where: Where | undefined, event: MouseEvent): void {
    if (where === undefined || where.uri === '') return;
    editor.postMessage({ type: 'reveal', where, focus: event.detail !== 1 });
}

const listeners = new Set<() => void>();

/** Calls `listener` whenever the text has refused what was to be written; answers how to stop that. */
export function whenRefused(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
}

export function tellRefused(): void {
    for (const listener of listeners) listener();
}
