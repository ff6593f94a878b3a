/**
 * The little of a browser that a live figure uses. The types of a whole browser
 * would make every file of the library believe that it runs in one.
 */

/** An element of a page. */
export interface PageElement {
  id: string;
  className: string;
  textContent: string;
  /** Of controls alone. */
  value: string;
  hidden: boolean;
  readonly isConnected: boolean;
  setAttribute(name: string, value: string): void;
  getAttribute(name: string): string | null;
  removeAttribute(name: string): void;
  append(...nodes: (PageElement | string)[]): void;
  replaceChildren(...nodes: (PageElement | string)[]): void;
  addEventListener(event: string, act: () => void): void;
}

/** A page. */
export interface PageDocument {
  readonly readyState: string;
  readonly head: PageElement;
  readonly documentElement: PageElement;
  createElement(name: string): PageElement;
  createElementNS(space: string, name: string): PageElement;
  querySelectorAll(selector: string): Iterable<PageElement>;
  addEventListener(event: string, act: () => void): void;
}

/** What a script finds in a browser. */
export interface PageWindow {
  readonly document: PageDocument;
  readonly MutationObserver: new (act: () => void) => {
    observe(
      target: PageElement,
      options: { childList: boolean; subtree: boolean },
    ): void;
  };
}
