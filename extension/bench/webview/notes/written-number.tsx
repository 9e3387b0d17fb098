import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { WrittenView } from '../../../../shared/view/bench-view';
import { write } from '../editor-link';

interface WrittenNumberProps {
    readonly name: string;
    readonly written: WrittenView;
    readonly textVersion: number;
}

/** Lets a number of the text be typed over where it is shown: Enter writes it, Escape leaves it. */
export function WrittenNumber({ name, written, textVersion }: WrittenNumberProps) {
    const [open, setOpen] = useState(false);
    const input = useRef<HTMLInputElement>(null);
    const button = useRef<HTMLButtonElement>(null);
    const opened = useRef(false);
    useLayoutEffect(() => {
        if (open) input.current?.select();
        else if (opened.current) button.current?.focus();
        opened.current = open;
    }, [open]);

    if (!open) {
        return (
            <button
                ref={button}
                type="button"
                class="type-over"
                aria-label={`Change ${name}, ${written.text}`}
                title={`Change ${name}`}
                onClick={() => setOpen(true)}
            >
                ✎
            </button>
        );
    }
    const press = (event: KeyboardEvent) => {
        // The editor would select all by a detour, and with it what is typed meanwhile.
        if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'a') event.stopPropagation();
        if (event.key === 'Escape') setOpen(false);
        else if (event.key !== 'Enter') return;
        event.preventDefault();
        event.stopPropagation();
        if (event.key === 'Escape') return;
        const text = input.current!.value.trim();
        if (text !== '' && text !== written.text) write(written.where, textVersion, text);
        setOpen(false);
    };
    return (
        <input
            ref={input}
            class="type-over"
            aria-label={`New ${name}`}
            defaultValue={written.text}
            size={Math.max(10, written.text.length + 2)}
            maxLength={60}
            spellcheck={false}
            onKeyDown={press}
            onBlur={() => setOpen(false)}
        />
    );
}
