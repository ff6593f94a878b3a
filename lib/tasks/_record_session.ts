/**
 * One session at the bench: line by line in, line by line out.
 *
 * @module
 */
import { zeroingLabel } from "../records/zeroing_label.ts";
import { Desk, type DeskSettings, promptOf } from "./_record_desk.ts";
import {
  choose,
  chooseDiameter,
  choosePlace,
  showMenu,
  takeZero,
} from "./_record_menu.ts";
import type { Next } from "./_record_route.ts";
import { type TypedLine, typedLine } from "./_record_typed_line.ts";

/** What takes a value; loaded while the first reading is being taken. */
function taking(): Promise<typeof import("./_record_take.ts")> {
  return import("./_record_take.ts");
}

/** Takes lines and answers them. */
export class Session {
  readonly #desk: Desk;

  /** Starts, or goes on where the file stops. */
  constructor(settings: DeskSettings) {
    this.#desk = new Desk(settings);
  }

  /** Loads what the first reading will want. */
  async warmUp(): Promise<void> {
    await taking();
    await this.#desk.with.scatter();
  }

  /** True when there is nothing more to do. */
  get ended(): boolean {
    const { question, next } = this.#desk;
    return question.kind === "ended" ||
      (question.kind === "next" && next.kind === "done" &&
        this.#desk.with.keeper.held.length === 0);
  }

  /** What is asked for now, without a line end. */
  get prompt(): string {
    return promptOf(this.#desk);
  }

  /** Answers one line; a reading in it is on the disk before its answer. */
  async take(text: string): Promise<void> {
    const desk = this.#desk;
    const { keeper, say, warn } = desk.with;
    const line = typedLine(text);
    if (keeper.held.length > 0) {
      await this.#retry();
      if (line.kind === "blank") return;
    }
    // The answer belongs to what was asked, whatever the file says by now.
    const asked = desk.next;
    const followed = await keeper.follow();
    if (followed !== undefined) say(followed);
    const bare = text.trim();
    if (/^[-\u2212]$/.test(bare)) return await this.#takeBack();
    if (bare === "." || bare === ",") return showMenu(desk);
    if (line.kind === "unreadable") {
      const why = await keeper.keepUnread(desk.rowOf({ reading: line.shown }));
      return warn(
        `${line.words}: “${line.shown}”. ${
          why === undefined
            ? `It stands in ${keeper.name}, marked as not read`
            : `It could not be saved: ${why}`
        }; take the reading again`,
      );
    }
    switch (desk.question.kind) {
      case "menu":
        return await choose(desk, bare);
      case "place":
        return choosePlace(desk, bare);
      case "turn":
      case "diameter":
        return chooseDiameter(desk, bare);
      case "extra":
        if (line.kind !== "value") return this.#noValue(line);
        return await (await taking()).takeValue(desk, desk.question.step, line);
      case "next":
        return await this.#takeNext(asked, line);
    }
  }

  async #takeNext(asked: Next, line: TypedLine): Promise<void> {
    const desk = this.#desk;
    if (asked.kind === "done") return;
    if (line.kind === "text") return this.#noValue(line);
    if (asked.kind === "zero" && desk.with.asks) {
      return takeZero(desk, asked, line);
    }
    if (line.kind !== "value") return;
    const { beginWith, takeValue } = await taking();
    if (asked.kind === "zero") return await beginWith(desk, line);
    return await takeValue(desk, asked.step, line);
  }

  /** Answers a line that is no value where one was asked for. */
  #noValue(line: TypedLine): void {
    const desk = this.#desk;
    desk.question = { kind: "next" };
    if (line.kind !== "text") return;
    desk.with.say(
      `“${
        line.text.slice(0, 40)
      }” is not a reading; nothing was kept. A point and Enter shows what else can be done.`,
    );
  }

  async #retry(): Promise<void> {
    const { keeper, say, warn } = this.#desk.with;
    const { saved, why } = await keeper.retry();
    if (saved.length > 0) {
      say(
        `Saved now: ${
          saved.map(({ zone, shown, sag }) =>
            `${shown?.amount ?? sag} at ${zone.label}`
          ).join(", ")
        }.`,
      );
    }
    if (why !== undefined) {
      warn(`still not saved: ${why}; ${keeper.held.length} held here`);
    }
  }

  async #takeBack(): Promise<void> {
    const desk = this.#desk;
    const { keeper, session, say, route } = desk.with;
    desk.question = { kind: "next" };
    const found = await keeper.withdrawLast(session);
    if (typeof found === "string") return say(`${found}.`);
    const { shown, zone, offset, diameterDegrees, zeroBeforeShown } = found;
    const zeroing = zeroingLabel(found);
    route.open(zeroing);
    desk.begun = {
      zeroing,
      ...(diameterDegrees === undefined
        ? {}
        : { diameter: String(diameterDegrees) }),
    };
    if (zeroBeforeShown !== undefined) {
      desk.zeroBefore ??= `${zeroBeforeShown.amount} ${zeroBeforeShown.unit}`;
    }
    say(
      `Taken back: ${offset < 0 ? "-" : ""}${zone.label} ${
        shown === undefined ? found.sag : `${shown.amount} ${shown.unit}`
      } (marked in ${keeper.name}, not erased).`,
    );
  }
}
