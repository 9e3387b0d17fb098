import { useEffect, useState } from 'preact/hooks';

/** Another value with every theme, for what does not take its colours from the style sheet by itself. */
export function useTheme(): string {
    const name = () => `${document.body.className} ${document.body.dataset.vscodeThemeId ?? ''}`;
    const [theme, setTheme] = useState(name);
    useEffect(() => {
        const observer = new MutationObserver(() => setTheme(name()));
        observer.observe(document.body, { attributes: true });
        return () => observer.disconnect();
    }, []);
    return theme;
}
