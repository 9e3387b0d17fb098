import * as vscode from 'vscode';

/** What came of a question: an answer, the wish to go back to the one before, or that it was broken off. */
export type Asked<T> = { readonly answer: T } | 'back' | 'broken-off';

interface Question {
    readonly title: string;
    readonly step: number;
    readonly of: number;
    /** What was answered before has been worked out, so that there is no way back to it. */
    readonly isLast?: boolean;
}

export interface Item<T> extends vscode.QuickPickItem {
    readonly value?: T;
}

/** A choice with a way back. Items without a value are headings. */
export function choose<T>(question: Question & { readonly placeholder: string }, items: readonly Item<T>[]): Promise<Asked<T>> {
    const input = vscode.window.createQuickPick<Item<T>>();
    input.items = items;
    input.placeholder = question.placeholder;
    input.matchOnDescription = true;
    return shown(input, question, (done) => {
        const [item] = input.selectedItems;
        if (item?.value !== undefined) done(item.value);
    });
}

/** A line of text with a way back; `problem` says why it cannot be taken. */
export function type(
    question: Question & { readonly prompt: string; readonly value: string },
    problem: (text: string) => string | undefined,
): Promise<Asked<string>> {
    const input = vscode.window.createInputBox();
    input.value = question.value;
    input.prompt = question.prompt;
    const check = () => {
        input.validationMessage = problem(input.value);
    };
    input.onDidChangeValue(check);
    return shown(input, question, (done) => {
        check();
        if (problem(input.value) === undefined) done(input.value);
    });
}

function shown<T>(
    input: vscode.QuickInput & {
        buttons: readonly vscode.QuickInputButton[];
        onDidAccept: vscode.Event<void>;
        onDidTriggerButton: vscode.Event<vscode.QuickInputButton>;
    },
    { title, step, of, isLast = false }: Question,
    accept: (done: (value: T) => void) => void,
): Promise<Asked<T>> {
    input.title = title;
    input.step = step;
    input.totalSteps = of;
    input.ignoreFocusOut = true;
    if (step > 1 && !isLast) input.buttons = [vscode.QuickInputButtons.Back];
    return new Promise((resolve) => {
        const end = (asked: Asked<T>) => {
            resolve(asked);
            input.dispose();
        };
        input.onDidTriggerButton(() => end('back'));
        input.onDidAccept(() => accept((answer) => end({ answer })));
        input.onDidHide(() => end('broken-off'));
        input.show();
    });
}
