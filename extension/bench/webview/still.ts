import { Component, type ComponentType, createElement, type FunctionComponent } from 'preact';

/** A component that is drawn anew only when one of its properties is another one. */
export function still<P extends object>(inner: FunctionComponent<P>): ComponentType<P> {
    return class Still extends Component<P> {
        override shouldComponentUpdate(next: P): boolean {
            const [now, then] = [this.props as Record<string, unknown>, next as Record<string, unknown>];
            const keys = Object.keys(then);
            return keys.length !== Object.keys(now).length || keys.some((key) => now[key] !== then[key]);
        }

        override render() {
            return createElement(inner, this.props as P);
        }
    };
}
