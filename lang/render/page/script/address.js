
// What is shown, in the address: it can be kept and passed on. Keys carry the junction's name; what
// was done is told by the names of signals, so that it means the same in a page made anew.
class Address {
  constructor() {
    this.values = new URLSearchParams(location.hash.slice(1));
  }

  get(key) {
    return this.values.get(key);
  }

  put(key, value) {
    if (value === null || value === "") this.values.delete(key);
    else this.values.set(key, value);
    const text = this.values.toString();
    history.replaceState(null, "", text === "" ? location.pathname + location.search : `#${text}`);
  }
}
