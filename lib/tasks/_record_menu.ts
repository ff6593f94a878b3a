/**
 * What can be done besides typing a reading, by keys that a glove finds.
 *
 * @module
 */
import { zeroingLabel } from "../records/zeroing_label.ts";
import type { Reading } from "../records/reading.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { parseNumber } from "../units/parse_number.ts";
import type { Desk, ToZero } from "./_record_desk.ts";
import type { TypedLine } from "./_record_typed_line.ts";

const MENU = [
  "1 look at the flat, 2 next set, zero again, 3 another place, 4 pass this one over,",
  "5 how it stands, 6 another diameter, 9 end. Enter: go back.",
];

/** Shows the menu. */
export function showMenu(desk: Desk): void {
  desk.question = { kind: "menu" };
  MENU.forEach(desk.with.say);
}

/** Does what was chosen. */
export async function choose(desk: Desk, typed: string): Promise<void> {
  const { route, say, stand } = desk.with;
  const { next } = desk;
  desk.question = { kind: "next" };
  const label = next.kind === "step" ? next.zeroing : undefined;
  if (typed === "") return;
  if (typed === "5") return await stand(desk.mine);
  if (typed === "9") {
    desk.question = { kind: "ended" };
    return;
  }
  if (!/^[12346]$/.test(typed)) {
    return say(`There is no ${typed.slice(0, 10)} here.`);
  }
  if (label === undefined || next.kind !== "step") {
    return say("Zero first: no set is begun.");
  }
  const set = desk.mine.filter((one) => zeroingLabel(one) === label);
  switch (typed) {
    case "1":
      desk.question = { kind: "extra", step: route.extra("flat", label, set) };
      return;
    case "2":
      route.close(label);
      desk.begun = undefined;
      desk.zeroBefore = undefined;
      if (set.length > 0) await stand(desk.mine);
      return;
    case "3":
      desk.question = { kind: "place" };
      return say(
        `${
          route.zones.map((zone, k) => `${k + 1} ${zone}`).join(", ")
        }, or a part of the half diameter such as .7; a minus before it: the other end.`,
      );
    case "4":
      route.skip(next.step);
      return say(`${next.step.label} is passed over.`);
    case "6":
      if (next.of !== undefined) return say("The plan says the diameter.");
      desk.question = { kind: "turn" };
  }
}

/** Takes the place of a reading out of turn. */
export function choosePlace(desk: Desk, typed: string): void {
  const { route, say } = desk.with;
  const { next } = desk;
  desk.question = { kind: "next" };
  if (typed === "" || next.kind !== "step") return;
  const bare = typed.replace(/^[-\u2212]\s*/, "");
  const part = /^0?[.,]\d+$/.test(bare)
    ? `${Number((100 * Number(bare.replace(",", "."))).toFixed(6))}%`
    : undefined;
  const listed = /^\d+$/.test(bare) ? route.zones[Number(bare) - 1] : undefined;
  const zone = part ?? listed;
  if (zone === undefined) return say("There is no such place.");
  const turned = bare !== typed;
  const placed = !turned
    ? zone
    : zone.startsWith("-")
    ? zone.slice(1)
    : `-${zone}`;
  const set = desk.mine.filter((one) => zeroingLabel(one) === next.zeroing);
  const step = route.extra(placed, next.zeroing, set);
  desk.question = { kind: "extra", step };
}

/** Takes the direction of a diameter. */
export function chooseDiameter(desk: Desk, typed: string): void {
  const { question } = desk;
  const read = parseNumber(typed.replace(/\s*(?:°|deg)$/, ""), {
    decimal: ".",
  });
  if (
    read.kind !== "blank" &&
    !(read.kind === "number" && Math.abs(read.value) <= 360)
  ) {
    return desk.with.say("Type degrees from 0 to 360, such as 60.");
  }
  if (/[.,]\d\d/.test(typed)) {
    return desk.with.say(
      "That looks like a reading; nothing was kept. Type the degrees of the diameter, such as 60, or Enter alone; the readings come next.",
    );
  }
  const degrees = read.kind === "number" ? String(read.value) : undefined;
  if (question.kind === "diameter") {
    return desk.begin(question.next, degrees ?? question.next.diameter);
  }
  desk.question = { kind: "next" };
  const { next } = desk;
  if (next.kind === "step" && degrees !== undefined) {
    desk.begun = { zeroing: next.zeroing, diameter: degrees };
  }
}

/** What the gauge shows on the work: here, in earlier sessions, or by target. */
function usualShown(
  { mine, nominal, with: settings }: Desk,
): number | undefined {
  const { keeper, ring, bench: { gauge } } = settings;
  const isWork = (one: Reading) => one.on === "work" && one.ring === ring;
  const read = mine.findLast(({ on }) => on === "work") ??
    keeper.readings.findLast(isWork);
  if (read?.shown !== undefined) return read.shown.amount;
  if (nominal === undefined || gauge.shows.kind !== "sag") return undefined;
  return gauge.unit === undefined
    ? undefined
    : amountIn(millimetres(nominal), gauge.unit);
}

/** Takes what the display showed before zero was pressed. */
export function takeZero(desk: Desk, next: ToZero, line: TypedLine): void {
  const { say } = desk.with;
  desk.zeroBefore = undefined;
  if (line.kind === "value") {
    const read = parseNumber(line.reading.replace(/\s*[^\d.,]*$/, ""), {
      decimal: ".",
    });
    const usual = usualShown(desk);
    if (read.kind !== "number") {
      return say(
        "That is no number; nothing was kept. What did the display show on the flat before zero was pressed?",
      );
    }
    if (usual !== undefined && Math.abs(read.value / usual) > 0.5) {
      return say(
        "That looks like a reading of the work; nothing was kept. Zero on the flat first; Enter alone goes on.",
      );
    }
    desk.zeroBefore = `${line.reading} ${line.unit}`.trim();
  }
  if (next.diameter === undefined) return desk.begin(next, undefined);
  desk.question = { kind: "diameter", next };
}
