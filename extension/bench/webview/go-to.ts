/** Brings a section to the top of the page, below the line of contents, and the keyboard to it. */
export function goToSection(heading: string): void {
    const target = document.getElementById(heading);
    if (target === null) return;
    target.scrollIntoView({ block: 'start' });
    if (!target.hasAttribute('tabindex')) target.setAttribute('tabindex', '-1');
    target.focus({ preventScroll: true });
}
