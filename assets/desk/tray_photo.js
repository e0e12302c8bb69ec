// A tray's photo by finger: its corners are dragged, and what was cut out is stroked. Without this file corners are typed.
"use strict";
(() => {
  const SVG = "http://www.w3.org/2000/svg";

  // ---- A photo that was chosen is sent at once. ----
  document.addEventListener("change", (event) => {
    if (event.target.matches("input[data-sends]") && event.target.files.length > 0) event.target.form.requestSubmit();
  });

  // Where a finger is, in the units of the drawing.
  const at = (svg, event) => new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());

  // ---- Corners. ----
  const handles = (svg) => [...svg.querySelectorAll("[data-corner]")];
  const point = (handle) => ({ x: Number(handle.getAttribute("cx")), y: Number(handle.getAttribute("cy")) });
  const field = (svg, axis, i) => svg.closest("form").elements[`${axis}${i}`];

  // The unit square as four corners show it (Heckbert, "Fundamentals of texture mapping", 1989, section 2.2.3).
  function seen([a, b, c, d]) {
    const [bx, by, dx, dy] = [b.x - c.x, b.y - c.y, d.x - c.x, d.y - c.y];
    const [sx, sy] = [a.x - b.x + c.x - d.x, a.y - b.y + c.y - d.y];
    const whole = bx * dy - dx * by;
    const [g, h] = [(sx * dy - dx * sy) / whole, (bx * sy - sx * by) / whole];
    return (u, v) => {
      const w = g * u + h * v + 1;
      const x = (b.x - a.x + g * b.x) * u + (d.x - a.x + h * d.x) * v + a.x;
      const y = (b.y - a.y + g * b.y) * u + (d.y - a.y + h * d.y) * v + a.y;
      return { x: x / w, y: y / w };
    };
  }

  function draw(svg) {
    const map = seen(handles(svg).map(point));
    const [rows, columns] = [Number(svg.dataset.rows), Number(svg.dataset.columns)];
    const line = (from, to) => `M${from.x.toFixed(1)} ${from.y.toFixed(1)}L${to.x.toFixed(1)} ${to.y.toFixed(1)}`;
    let path = "";
    for (let i = 0; i <= columns; i += 1) path += line(map(i / columns, 0), map(i / columns, 1));
    for (let i = 0; i <= rows; i += 1) path += line(map(0, i / rows), map(1, i / rows));
    // Corners that lie on a line make no tray; the walls stay where they were until they do.
    if (!path.includes("NaN") && !path.includes("Infinity")) svg.querySelectorAll("path").forEach((one) => one.setAttribute("d", path));
    const first = map(0.5 / columns, 0.5 / rows);
    const put = (text, to) => { text.setAttribute("x", to.x); text.setAttribute("y", to.y); };
    if (Number.isFinite(first.x)) put(svg.querySelector(".first"), first);
    svg.querySelectorAll("text.corner").forEach((text, i) => put(text, point(handles(svg)[i])));
  }

  function move(svg, handle, to) {
    const { width, height } = svg.viewBox.baseVal;
    const x = Math.min(Math.max(to.x, 0), width);
    const y = Math.min(Math.max(to.y, 0), height);
    handle.setAttribute("cx", x);
    handle.setAttribute("cy", y);
    field(svg, "x", handle.dataset.corner).value = ((100 * x) / width).toFixed(2);
    field(svg, "y", handle.dataset.corner).value = ((100 * y) / height).toFixed(2);
    draw(svg);
  }

  // What is typed is shown.
  document.addEventListener("input", (event) => {
    const svg = event.target.form?.querySelector(".tray-corners");
    const [, axis, i] = event.target.name?.match(/^([xy])([0-3])$/) ?? [];
    const percent = Number(event.target.value.replace(",", "."));
    if (!svg || !axis || !(percent >= 0 && percent <= 100)) return;
    const { width, height } = svg.viewBox.baseVal;
    handles(svg)[i].setAttribute(axis === "x" ? "cx" : "cy", (percent / 100) * (axis === "x" ? width : height));
    draw(svg);
  });

  // ---- Strokes. ----
  const strokesOf = (svg) => JSON.parse(svg.closest("form").elements.strokes.value || "[]");
  const keepStrokes = (svg, strokes) => { svg.closest("form").elements.strokes.value = JSON.stringify(strokes); };

  document.addEventListener("click", (event) => {
    const button = event.target.closest?.("[data-stroke]");
    if (!button) return;
    const form = button.form;
    const svg = form.querySelector(".strokes");
    if (button.dataset.stroke === "back") {
      keepStrokes(svg, strokesOf(svg).slice(0, -1));
      svg.querySelector("polyline:last-of-type")?.remove();
      return;
    }
    form.querySelectorAll("[data-stroke][aria-pressed]").forEach((one) => one.setAttribute("aria-pressed", String(one === button)));
  });

  // ---- One finger at a time. ----
  let work = null;
  document.addEventListener("pointerdown", (event) => {
    const svg = event.target.closest?.(".tray-corners, .strokes");
    if (!svg || work || event.button > 0) return;
    event.preventDefault();
    svg.setPointerCapture?.(event.pointerId);
    const from = at(svg, event);
    if (svg.matches(".strokes")) {
      const keep = svg.closest("form").querySelector("[data-stroke=keep]").getAttribute("aria-pressed") === "true";
      const drawn = document.createElementNS(SVG, "polyline");
      drawn.setAttribute("class", keep ? "keep" : "drop");
      drawn.setAttribute("stroke-width", 2 * Number(svg.dataset.radiusMm) * Number(svg.dataset.pxPerMm));
      svg.append(drawn);
      work = { svg, id: event.pointerId, drawn, stroke: { keep, points: [{ x: from.x, y: from.y }], radius_mm: Number(svg.dataset.radiusMm) } };
      return;
    }
    // The nearest corner goes along with the finger, which need not cover it.
    const far = (handle) => Math.hypot(point(handle).x - from.x, point(handle).y - from.y);
    const handle = handles(svg).sort((a, b) => far(a) - far(b))[0];
    work = { svg, id: event.pointerId, handle, from, began: point(handle) };
  });
  document.addEventListener("pointermove", (event) => {
    if (!work || event.pointerId !== work.id) return;
    const to = at(work.svg, event);
    if (work.handle) {
      move(work.svg, work.handle, { x: work.began.x + to.x - work.from.x, y: work.began.y + to.y - work.from.y });
      return;
    }
    const { points } = work.stroke;
    if (points.length < Number(work.svg.dataset.mostPoints)) points.push({ x: to.x, y: to.y });
    work.drawn.setAttribute("points", points.map((one) => `${one.x.toFixed(0)},${one.y.toFixed(0)}`).join(" "));
  });
  const end = (event) => {
    if (!work || event.pointerId !== work.id) return;
    if (work.stroke) keepStrokes(work.svg, [...strokesOf(work.svg), work.stroke].slice(0, Number(work.svg.dataset.most)));
    work = null;
  };
  document.addEventListener("pointerup", end);
  document.addEventListener("pointercancel", end);
})();
