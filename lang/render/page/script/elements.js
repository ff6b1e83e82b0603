
// An element with attributes and children; functions among the attributes are listeners.
function element(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  return furnished(made, attributes, children);
}

function shape(tag, attributes = {}, ...children) {
  const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
  return furnished(made, attributes, children);
}

function furnished(made, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") made.addEventListener(name, value);
    else if (value !== null && value !== false) made.setAttribute(name, value === true ? "" : value);
  }
  made.append(...children);
  return made;
}

function button(words, press, attributes = {}) {
  return element("button", { type: "button", click: press, ...attributes }, words);
}

// A disabled button would lose the keyboard's place, so it only says that it does nothing.
function enable(control, isEnabled) {
  if (isEnabled) control.removeAttribute("aria-disabled");
  else control.setAttribute("aria-disabled", "true");
}

function isEnabled(control) {
  return control.getAttribute("aria-disabled") !== "true";
}

const wantsLessMotion = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

const placeWords = ({ x, y, z }) => `level ${z}, row ${y}, column ${x}`;
const placeCode = ({ x, y, z }) => `${x} ${y} ${z}`;

// Does something again and again until it says that it is done.
class Clockwork {
  #timer = null;

  get isGoing() {
    return this.#timer !== null;
  }

  start(milliseconds, turn) {
    this.stop();
    this.#timer = setInterval(() => {
      if (!turn()) this.stop();
    }, milliseconds);
  }

  stop() {
    clearInterval(this.#timer);
    this.#timer = null;
  }
}
