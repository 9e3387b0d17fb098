import type * as vscode from 'vscode';

/** The rule that a squiggle of ours is of; undefined for another's. */
export function ruleOf({ source, code }: vscode.Diagnostic): string | undefined {
    if (source !== 'kerfbook') return undefined;
    const rule = typeof code === 'object' ? code.value : code;
    return typeof rule === 'string' ? rule : undefined;
}
