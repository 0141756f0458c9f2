// Looks words up in the index that was made with the pages. Nothing is asked
// of anybody: the page works from a folder, without a network.
"use strict";

(function () {
  const most = 40; // results that are shown
  const form = document.getElementById("ask");
  const box = document.getElementById("question");
  const state = document.getElementById("state");
  const list = document.getElementById("found");

  // fold makes letters alike that are written differently: É as e.
  function fold(text) {
    return text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  }

  // words of a text; what is held together by hyphens counts as a whole and in
  // its pieces.
  function words(text) {
    const all = [];
    for (const whole of fold(text).match(/[\p{L}\p{N}_]+(?:[-'’][\p{L}\p{N}_]+)*/gu) || []) {
      all.push(whole);
      const pieces = whole.split(/[-_'’]/u);
      if (pieces.length > 1) all.push(...pieces.filter(Boolean));
    }
    return all;
  }

  // stem is a word without the ending it has in a sentence: leak for leaks and
  // leaking. It need not be a word.
  function stem(word) {
    if (word.length < 4 || !/^[a-z]+$/.test(word)) return word;
    let s = word.replace(/ies$/, "y").replace(/(ss|sh|ch|x|z)es$/, "$1").replace(/([^s])s$/, "$1");
    s = s.replace(/(?<=[a-z]{3})(ing|ed)$/, "").replace(/([bdgmnprt])\1$/, "$1");
    return s.length > 3 ? s.replace(/e$/, "") : s;
  }

  // little are words that say nothing of what is looked for.
  const little = new Set(("a an and any are as at be by can do does for from has have how i if in is it its may me my not of on or " +
    "should so that the their there these this to too was what when where which who why will with you your").split(" "));

  // known leads from each word to the entries that have it, with a weight: the
  // key and the title weigh more than the text.
  const known = new Map();
  function note(text, entry, weight) {
    for (const word of new Set(words(text))) {
      if (!known.has(word)) known.set(word, new Map());
      const at = known.get(word);
      at.set(entry, Math.max(at.get(entry) || 0, weight));
    }
  }
  handbookIndex.forEach((e, i) => {
    note(e.words, i, 1);
    note(e.asked, i, 5);
    note(e.title, i, 6);
    note(e.key, i, 8);
  });

  const alike = new Map(); // the known words of each stem
  for (const k of known.keys()) {
    const s = stem(k);
    if (!alike.has(s)) alike.set(s, []);
    alike.get(s).push(k);
  }

  // rare is how much a word tells things apart that so many have: 1 where all
  // have it.
  const rare = (many) => 1 + Math.log(handbookIndex.length / many) / 2;

  // apart is how many slips of the keys lie between two words, up to a limit: a
  // letter left out, put in, wrong, or two swapped.
  function apart(a, b, limit) {
    if (Math.abs(a.length - b.length) > limit) return limit + 1;
    let before = [], last = Array.from({ length: b.length + 1 }, (_, j) => j);
    for (let i = 1; i <= a.length; i++) {
      const row = [i];
      let least = i;
      for (let j = 1; j <= b.length; j++) {
        row[j] = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
        if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) row[j] = Math.min(row[j], before[j - 2] + 1);
        least = Math.min(least, row[j]);
      }
      if (least > limit) return limit + 1;
      before = last;
      last = row;
    }
    return last[b.length];
  }

  // meant are the known words that a word of the question can mean, with how
  // sure that is. Near ones are asked only where nothing begins like it.
  function meant(word) {
    const all = new Map();
    for (const k of known.keys()) {
      if (k === word) all.set(k, 1);
      else if (word.length > 1 && k.startsWith(word)) all.set(k, 0.6);
    }
    for (const k of alike.get(stem(word)) || []) all.set(k, Math.max(all.get(k) || 0, 0.9));
    if (all.size > 0 || word.length < 3) return { all, instead: "" };
    const limit = word.length < 5 ? 1 : 2;
    let nearest = limit + 1;
    for (const k of known.keys()) {
      const d = apart(word, k, limit);
      if (d > limit) continue;
      nearest = Math.min(nearest, d);
      all.set(k, 0.5 / d);
    }
    for (const k of [...all.keys()]) if (all.get(k) < 0.5 / nearest) all.delete(k);
    return { all, instead: [...all.keys()].slice(0, 3).join(", ") };
  }

  function look(question) {
    const said = [...new Set(fold(question).match(/[\p{L}\p{N}_]+(?:[-'’][\p{L}\p{N}_]+)*/gu) || [])];
    const telling = said.filter((word) => !little.has(word));
    const asked = telling.length > 0 ? telling : said;
    const scores = new Map();
    let wanted = 0; // words that a thing must have
    const slips = [];
    const taken = []; // the words of the question, slips put right
    for (const word of asked) {
      const best = new Map();
      const { all, instead } = meant(word);
      if (instead) slips.push([word, instead]);
      taken.push(instead.split(", ")[0] || word);
      for (const [k, sure] of all) {
        for (const [entry, weight] of known.get(k)) best.set(entry, Math.max(best.get(entry) || 0, weight * sure));
      }
      const everywhere = best.size > handbookIndex.length / 4; // as wax and candle are: nothing need have it
      if (!everywhere) wanted++;
      for (const [entry, score] of best) {
        const s = scores.get(entry) || { had: 0, score: 0 };
        if (!everywhere) s.had++;
        s.score += score * rare(best.size);
        scores.set(entry, s);
      }
    }
    const phrase = taken.join(" ");
    const whole = said.join(" ");
    const found = [];
    for (const [i, s] of scores) {
      const e = handbookIndex[i];
      const title = fold(e.title), key = fold(e.key);
      if (title === phrase || key === phrase || key === taken.join("-")) s.score += 40;
      else if (title.includes(phrase) || key.replace(/[-_]/g, " ").includes(phrase)) s.score += 12;
      const ways = fold(e.asked).replace(/[?.]/g, "").split(", ");
      if (ways.includes(whole)) s.score += 30;
      else if (said.length > 1 && ways.some((way) => (" " + way + " ").includes(" " + whole + " "))) s.score += 20;
      if (e.kind === "format") s.score *= 0.5; // who asks a question wants the trade before the format
      found.push({ e, i, had: s.had, score: s.score });
    }
    const had = Math.max(0, ...found.map((f) => f.had));
    return {
      asked, slips,
      partly: had < wanted,
      found: found.filter((f) => f.had === had).sort((a, b) => b.score - a.score || a.i - b.i),
    };
  }

  function element(name, text, inside) {
    const made = document.createElement(name);
    if (text) made.textContent = text;
    if (inside) inside.append(made);
    return made;
  }

  function show() {
    list.replaceChildren();
    const question = box.value.trim();
    if (!question) {
      state.textContent = "";
      return;
    }
    const { slips, partly, found } = look(question);
    let said = found.length === 0 ? "Nothing found." : found.length === 1 ? "1 thing found." : found.length + " things found.";
    if (found.length > most) said = "The first " + most + " of " + found.length + " things found.";
    for (const [word, instead] of slips) said += " No page says “" + word + "”; taken for " + instead + ".";
    if (partly && found.length > 0) said += " No page has all of these words.";
    state.textContent = said;
    for (const { e } of found.slice(0, most)) {
      const item = element("li", "", list);
      const link = element("a", e.title, item);
      link.href = e.at;
      item.append(" ");
      element("span", e.kind + (fold(e.key) === fold(e.title) ? "" : ", " + e.key), item).className = "kind";
      if (e.asked.endsWith("?")) element("p", e.asked, item).className = "question";
      if (e.says) element("p", e.says, item);
    }
  }

  box.value = new URLSearchParams(location.search).get("q") || "";
  form.hidden = false;
  box.addEventListener("input", show);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    show();
  });
  show();
})();
