import {
  type ChoiceControl,
  type Control,
  type Drawing,
  isWithin,
  type NumberControl,
  type Settings,
  settingsOf,
} from "./_drawing.ts";
import type { PageDocument, PageElement } from "./_page_parts.ts";
import { type Shape, tidy } from "./_shape.ts";
import { LIVE_FONT } from "./_theme.ts";

const SVG = "http://www.w3.org/2000/svg";

/** One live figure in a page: the picture, its controls and its numbers. */
export class Panel {
  readonly #page: PageDocument;
  readonly #drawing: Drawing;
  readonly #id: string;
  readonly #numbers: Record<string, number>;
  readonly #choices: Record<string, string>;
  readonly #resets: (() => void)[] = [];
  readonly #picture: PageElement;
  readonly #told: PageElement[] = [];

  constructor(
    page: PageDocument,
    drawing: Drawing,
    id: string,
    host: PageElement,
    start: Settings,
  ) {
    this.#page = page;
    this.#drawing = drawing;
    this.#id = id;
    this.#numbers = { ...start.numbers };
    this.#choices = { ...start.choices };
    const { width, height, numbers } = this.#drawn();
    this.#picture = page.createElementNS(SVG, "svg");
    for (
      const [name, value] of Object.entries({
        viewBox: `0 0 ${width} ${height}`,
        role: "img",
        "aria-labelledby": `${id}-title ${id}-desc`,
        "font-family": LIVE_FONT,
        class: "lv-picture",
      })
    ) this.#picture.setAttribute(name, value);
    const controls = this.#element("div", "lv-controls");
    controls.append(...drawing.controls.map((one) => this.#control(one)));
    const list = this.#element("dl", "lv-numbers");
    for (const { label } of numbers) {
      const told = this.#element("output", "");
      told.setAttribute("aria-label", label);
      this.#told.push(told);
      const [row, name, value] = [
        this.#element("div", ""),
        this.#element("dt", "", label),
        this.#element("dd", ""),
      ];
      value.append(told);
      row.append(name, value);
      list.append(row);
    }
    const back = this.#element("button", "lv-back", "Back to the start");
    back.setAttribute("type", "button");
    back.addEventListener("click", () => {
      for (const reset of this.#resets) reset();
      this.#show();
    });
    controls.append(back);
    const [body, side] = [
      this.#element("div", "lv-body"),
      this.#element("div", "lv-side"),
    ];
    side.append(list, controls);
    body.append(this.#picture, side);
    host.replaceChildren(body);
    this.#show();
  }

  #drawn() {
    return this.#drawing.draw({
      numbers: this.#numbers,
      choices: this.#choices,
    });
  }

  #element(name: string, className: string, text?: string): PageElement {
    const element = this.#page.createElement(name);
    if (className !== "") element.className = className;
    if (text !== undefined) element.textContent = text;
    return element;
  }

  #shape(shape: Shape | string): PageElement | string {
    if (typeof shape === "string") return shape;
    const element = this.#page.createElementNS(SVG, shape.tag);
    for (const [name, value] of Object.entries(shape.attributes)) {
      const text = tidy(value);
      // An id holds for the whole page, not for one picture.
      element.setAttribute(
        name,
        name === "id"
          ? `${this.#id}-${text}`
          : text.replace(/^url\(#/, `url(#${this.#id}-`),
      );
    }
    element.append(...shape.children.map((child) => this.#shape(child)));
    return element;
  }

  /** Draws anew and tells the numbers. */
  #show(): void {
    const { width, height, shapes, description, numbers } = this.#drawn();
    const named = (tag: string, text: string): PageElement => {
      const element = this.#page.createElementNS(SVG, tag);
      element.id = `${this.#id}-${tag}`;
      element.textContent = text;
      return element;
    };
    const paper: Shape = {
      tag: "rect",
      attributes: { class: "f-paper", width, height },
      children: [],
    };
    this.#picture.replaceChildren(
      named("title", this.#drawing.title),
      named("desc", description),
      ...[paper, ...shapes].map((shape) => this.#shape(shape)),
    );
    numbers.forEach(({ text }, index) => {
      this.#told[index].textContent = text;
    });
  }

  #control(control: Control): PageElement {
    return control.kind === "number"
      ? this.#slider(control)
      : this.#choice(control);
  }

  /** A slider and a box for the same number. */
  #slider(control: NumberControl): PageElement {
    const { id, label, unit, least, most, step } = control;
    const start = this.#numbers[id];
    const holder = this.#element("div", "lv-control");
    const name = this.#element("label", "", label);
    const field = this.#element("input", "lv-field");
    const range = this.#element("input", "lv-range");
    const wrong = this.#element("span", "lv-wrong");
    wrong.id = `${this.#id}-${id}-wrong`;
    wrong.setAttribute("role", "status");
    field.id = `${this.#id}-${id}`;
    name.setAttribute("for", field.id);
    for (
      const [input, type] of [[field, "number"], [range, "range"]] as const
    ) {
      input.setAttribute("type", type);
      input.setAttribute("min", String(least));
      input.setAttribute("max", String(most));
      input.setAttribute("step", String(step));
      input.setAttribute("autocomplete", "off");
    }
    field.setAttribute("inputmode", "decimal");
    range.setAttribute("aria-label", `${label}, slider`);
    const set = (value: number, from?: PageElement): void => {
      this.#numbers[id] = value;
      if (from !== field) field.value = String(value);
      if (from !== range) range.value = String(value);
      range.setAttribute("aria-valuetext", `${value} ${unit}`.trim());
      field.removeAttribute("aria-invalid");
      field.removeAttribute("aria-describedby");
      wrong.textContent = "";
    };
    range.addEventListener("input", () => {
      set(Number(range.value), range);
      this.#show();
    });
    field.addEventListener("input", () => {
      const value = field.value.trim() === "" ? NaN : Number(field.value);
      if (isWithin(control, value)) {
        set(value, field);
        this.#show();
        return;
      }
      field.setAttribute("aria-invalid", "true");
      field.setAttribute("aria-describedby", wrong.id);
      wrong.textContent = `${least} to ${most} ${unit}`.trim();
    });
    this.#resets.push(() => set(start));
    set(start);
    const typed = this.#element("span", "lv-typed");
    typed.append(field, unit === "" ? "" : ` ${unit}`);
    holder.append(name, typed, range, wrong);
    return holder;
  }

  /** A few named choices, one of them taken. */
  #choice(control: ChoiceControl): PageElement {
    const { id, label, options } = control;
    const start = this.#choices[id];
    const holder = this.#element("div", "lv-control lv-choice");
    const name = this.#element("label", "", label);
    const list = this.#element("select", "lv-field");
    list.id = `${this.#id}-${id}`;
    name.setAttribute("for", list.id);
    for (const [value, text] of Object.entries(options)) {
      const option = this.#element("option", "", text);
      option.setAttribute("value", value);
      list.append(option);
    }
    list.value = start;
    list.addEventListener("input", () => {
      this.#choices[id] = list.value;
      this.#show();
    });
    this.#resets.push(() => {
      this.#choices[id] = start;
      list.value = start;
    });
    holder.append(name, list);
    return holder;
  }
}

/** Turns a still figure into a live one, if it names one of ours. */
export function enliven(
  page: PageDocument,
  drawings: Readonly<Record<string, Drawing>>,
  host: PageElement,
  id: string,
): boolean {
  const name = host.getAttribute("data-live") ?? "";
  if (!Object.hasOwn(drawings, name)) return false;
  let given: unknown;
  try {
    given = JSON.parse(host.getAttribute("data-settings") ?? "{}");
  } catch {
    given = undefined;
  }
  const start = settingsOf(
    drawings[name],
    typeof given === "object" && given !== null
      ? given as Record<string, unknown>
      : {},
  );
  host.setAttribute("data-is-live", "");
  new Panel(page, drawings[name], id, host, start);
  return true;
}
