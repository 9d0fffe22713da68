// Made from docs/schema/cautions.schema.json by scripts/schemas.mjs. Change the schema, not this file.
var __getOwnPropNames = Object.getOwnPropertyNames;
var __commonJS = (cb, mod) => function __require() {
  try {
    return mod || (0, cb[__getOwnPropNames(cb)[0]])((mod = { exports: {} }).exports, mod), mod.exports;
  } catch (e) {
    throw mod = 0, e;
  }
};

// node_modules/ajv/dist/runtime/ucs2length.js
var require_ucs2length = __commonJS({
  "node_modules/ajv/dist/runtime/ucs2length.js"(exports) {
    "use strict";
    Object.defineProperty(exports, "__esModule", { value: true });
    function ucs2length(str) {
      const len = str.length;
      let length = 0;
      let pos = 0;
      let value;
      while (pos < len) {
        length++;
        value = str.charCodeAt(pos++);
        if (value >= 55296 && value <= 56319 && pos < len) {
          value = str.charCodeAt(pos);
          if ((value & 64512) === 56320)
            pos++;
        }
      }
      return length;
    }
    exports.default = ucs2length;
    ucs2length.code = 'require("ajv/dist/runtime/ucs2length").default';
  }
});

// <stdin>
var validate = validate10;
var stdin_default = validate10;
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "cautions.schema.json", "title": "Cautions", "description": "Safety texts by name. Each comes before the prompt of every step it applies to.", "type": "object", "required": ["cautions"], "additionalProperties": false, "properties": { "language": { "title": "Language", "description": "Of the texts, as in BCP 47: en, de, fr-CA. English when it is left out. A shipped text can be put in another language under its own name; in the same language it stays as it is.", "type": "string", "pattern": "^[a-z]{2,3}(-[A-Za-z0-9]{2,8}){0,3}$" }, "cautions": { "title": "Cautions", "description": "The safety texts by name.", "type": "object", "propertyNames": { "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "additionalProperties": { "type": "object", "required": ["word", "say", "hazards"], "additionalProperties": false, "properties": { "word": { "title": "Signal word", "description": "DANGER: will kill or injure badly. WARNING: could. CAUTION: could injure lightly. NOTICE: damage to things.", "enum": ["DANGER", "WARNING", "CAUTION", "NOTICE"] }, "say": { "title": "Text", "description": "What is shown on the screen, in plain sentences.", "type": "string", "minLength": 10, "maxLength": 1e3 }, "hazards": { "title": "Hazards", "description": "What it warns of; each vehicle state, and work that the program knows, asks for some of them. A hazard that none of these names is other, and its text tells it.", "type": "array", "minItems": 1, "items": { "enum": ["rotating-parts", "hot-parts", "exhaust-gas", "unexpected-start", "vehicle-secured", "energised-circuit", "battery", "high-voltage", "module-damage", "instrument-damage", "fuel", "airbag", "harness-damage", "engine-start", "ignition-voltage", "raw-fuel", "starter-heat", "engine-damage", "vehicle-moves", "traffic", "other"] } }, "states": { "title": "Vehicle states", "description": "Applies to every step in one of these states.", "type": "array", "items": { "enum": ["key-off", "key-on", "cranking", "running", "driving"] } }, "drives": { "title": "Drives", "description": "Only for vehicles with one of these.", "type": "array", "items": { "enum": ["combustion", "hybrid", "electric", "not-stated"] } }, "when": { "title": "When", "description": "Applies to every step that uses one of these.", "type": "array", "items": { "enum": ["ohms", "amps", "light", "lamp", "bridge", "lead", "fed-wire", "unplug", "module-off", "back-probe", "spare", "moving"] } } } } } } };
var pattern0 = new RegExp("^[a-z]{2,3}(-[A-Za-z0-9]{2,8}){0,3}$", "u");
var pattern1 = new RegExp("^[a-z][a-z0-9-]{0,60}$", "u");
var func2 = require_ucs2length().default;
function validate10(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.cautions === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "cautions" }, message: "must have required property 'cautions'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "language" || key0 === "cautions")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.language !== void 0) {
      let data0 = data.language;
      if (typeof data0 === "string") {
        if (!pattern0.test(data0)) {
          const err2 = { instancePath: instancePath + "/language", schemaPath: "#/properties/language/pattern", keyword: "pattern", params: { pattern: "^[a-z]{2,3}(-[A-Za-z0-9]{2,8}){0,3}$" }, message: 'must match pattern "^[a-z]{2,3}(-[A-Za-z0-9]{2,8}){0,3}$"', schema: "^[a-z]{2,3}(-[A-Za-z0-9]{2,8}){0,3}$", parentSchema: schema11.properties.language, data: data0 };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/language", schemaPath: "#/properties/language/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.language.type, parentSchema: schema11.properties.language, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.cautions !== void 0) {
      let data1 = data.cautions;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key1 in data1) {
          const _errs6 = errors;
          if (typeof key1 === "string") {
            if (!pattern1.test(key1)) {
              const err4 = { instancePath: instancePath + "/cautions", schemaPath: "#/properties/cautions/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.cautions.propertyNames, data: key1, propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          }
          var valid1 = _errs6 === errors;
          if (!valid1) {
            const err5 = { instancePath: instancePath + "/cautions", schemaPath: "#/properties/cautions/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid", schema: schema11.properties.cautions.propertyNames, parentSchema: schema11.properties.cautions, data: data1 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        for (const key2 in data1) {
          let data2 = data1[key2];
          if (data2 && typeof data2 == "object" && !Array.isArray(data2)) {
            if (data2.word === void 0) {
              const err6 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/cautions/additionalProperties/required", keyword: "required", params: { missingProperty: "word" }, message: "must have required property 'word'", schema: schema11.properties.cautions.additionalProperties.required, parentSchema: schema11.properties.cautions.additionalProperties, data: data2 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
            if (data2.say === void 0) {
              const err7 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/cautions/additionalProperties/required", keyword: "required", params: { missingProperty: "say" }, message: "must have required property 'say'", schema: schema11.properties.cautions.additionalProperties.required, parentSchema: schema11.properties.cautions.additionalProperties, data: data2 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (data2.hazards === void 0) {
              const err8 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/cautions/additionalProperties/required", keyword: "required", params: { missingProperty: "hazards" }, message: "must have required property 'hazards'", schema: schema11.properties.cautions.additionalProperties.required, parentSchema: schema11.properties.cautions.additionalProperties, data: data2 };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
            for (const key3 in data2) {
              if (!(key3 === "word" || key3 === "say" || key3 === "hazards" || key3 === "states" || key3 === "drives" || key3 === "when")) {
                const err9 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/cautions/additionalProperties/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.cautions.additionalProperties, data: data2 };
                if (vErrors === null) {
                  vErrors = [err9];
                } else {
                  vErrors.push(err9);
                }
                errors++;
              }
            }
            if (data2.word !== void 0) {
              let data3 = data2.word;
              if (!(data3 === "DANGER" || data3 === "WARNING" || data3 === "CAUTION" || data3 === "NOTICE")) {
                const err10 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/word", schemaPath: "#/properties/cautions/additionalProperties/properties/word/enum", keyword: "enum", params: { allowedValues: schema11.properties.cautions.additionalProperties.properties.word.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.cautions.additionalProperties.properties.word.enum, parentSchema: schema11.properties.cautions.additionalProperties.properties.word, data: data3 };
                if (vErrors === null) {
                  vErrors = [err10];
                } else {
                  vErrors.push(err10);
                }
                errors++;
              }
            }
            if (data2.say !== void 0) {
              let data4 = data2.say;
              if (typeof data4 === "string") {
                if (func2(data4) > 1e3) {
                  const err11 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/say", schemaPath: "#/properties/cautions/additionalProperties/properties/say/maxLength", keyword: "maxLength", params: { limit: 1e3 }, message: "must NOT have more than 1000 characters", schema: 1e3, parentSchema: schema11.properties.cautions.additionalProperties.properties.say, data: data4 };
                  if (vErrors === null) {
                    vErrors = [err11];
                  } else {
                    vErrors.push(err11);
                  }
                  errors++;
                }
                if (func2(data4) < 10) {
                  const err12 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/say", schemaPath: "#/properties/cautions/additionalProperties/properties/say/minLength", keyword: "minLength", params: { limit: 10 }, message: "must NOT have fewer than 10 characters", schema: 10, parentSchema: schema11.properties.cautions.additionalProperties.properties.say, data: data4 };
                  if (vErrors === null) {
                    vErrors = [err12];
                  } else {
                    vErrors.push(err12);
                  }
                  errors++;
                }
              } else {
                const err13 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/say", schemaPath: "#/properties/cautions/additionalProperties/properties/say/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.cautions.additionalProperties.properties.say.type, parentSchema: schema11.properties.cautions.additionalProperties.properties.say, data: data4 };
                if (vErrors === null) {
                  vErrors = [err13];
                } else {
                  vErrors.push(err13);
                }
                errors++;
              }
            }
            if (data2.hazards !== void 0) {
              let data5 = data2.hazards;
              if (Array.isArray(data5)) {
                if (data5.length < 1) {
                  const err14 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/hazards", schemaPath: "#/properties/cautions/additionalProperties/properties/hazards/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.cautions.additionalProperties.properties.hazards, data: data5 };
                  if (vErrors === null) {
                    vErrors = [err14];
                  } else {
                    vErrors.push(err14);
                  }
                  errors++;
                }
                const len0 = data5.length;
                for (let i0 = 0; i0 < len0; i0++) {
                  let data6 = data5[i0];
                  if (!(data6 === "rotating-parts" || data6 === "hot-parts" || data6 === "exhaust-gas" || data6 === "unexpected-start" || data6 === "vehicle-secured" || data6 === "energised-circuit" || data6 === "battery" || data6 === "high-voltage" || data6 === "module-damage" || data6 === "instrument-damage" || data6 === "fuel" || data6 === "airbag" || data6 === "harness-damage" || data6 === "engine-start" || data6 === "ignition-voltage" || data6 === "raw-fuel" || data6 === "starter-heat" || data6 === "engine-damage" || data6 === "vehicle-moves" || data6 === "traffic" || data6 === "other")) {
                    const err15 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/hazards/" + i0, schemaPath: "#/properties/cautions/additionalProperties/properties/hazards/items/enum", keyword: "enum", params: { allowedValues: schema11.properties.cautions.additionalProperties.properties.hazards.items.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.cautions.additionalProperties.properties.hazards.items.enum, parentSchema: schema11.properties.cautions.additionalProperties.properties.hazards.items, data: data6 };
                    if (vErrors === null) {
                      vErrors = [err15];
                    } else {
                      vErrors.push(err15);
                    }
                    errors++;
                  }
                }
              } else {
                const err16 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/hazards", schemaPath: "#/properties/cautions/additionalProperties/properties/hazards/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.cautions.additionalProperties.properties.hazards.type, parentSchema: schema11.properties.cautions.additionalProperties.properties.hazards, data: data5 };
                if (vErrors === null) {
                  vErrors = [err16];
                } else {
                  vErrors.push(err16);
                }
                errors++;
              }
            }
            if (data2.states !== void 0) {
              let data7 = data2.states;
              if (Array.isArray(data7)) {
                const len1 = data7.length;
                for (let i1 = 0; i1 < len1; i1++) {
                  let data8 = data7[i1];
                  if (!(data8 === "key-off" || data8 === "key-on" || data8 === "cranking" || data8 === "running" || data8 === "driving")) {
                    const err17 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/states/" + i1, schemaPath: "#/properties/cautions/additionalProperties/properties/states/items/enum", keyword: "enum", params: { allowedValues: schema11.properties.cautions.additionalProperties.properties.states.items.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.cautions.additionalProperties.properties.states.items.enum, parentSchema: schema11.properties.cautions.additionalProperties.properties.states.items, data: data8 };
                    if (vErrors === null) {
                      vErrors = [err17];
                    } else {
                      vErrors.push(err17);
                    }
                    errors++;
                  }
                }
              } else {
                const err18 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/states", schemaPath: "#/properties/cautions/additionalProperties/properties/states/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.cautions.additionalProperties.properties.states.type, parentSchema: schema11.properties.cautions.additionalProperties.properties.states, data: data7 };
                if (vErrors === null) {
                  vErrors = [err18];
                } else {
                  vErrors.push(err18);
                }
                errors++;
              }
            }
            if (data2.drives !== void 0) {
              let data9 = data2.drives;
              if (Array.isArray(data9)) {
                const len2 = data9.length;
                for (let i2 = 0; i2 < len2; i2++) {
                  let data10 = data9[i2];
                  if (!(data10 === "combustion" || data10 === "hybrid" || data10 === "electric" || data10 === "not-stated")) {
                    const err19 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/drives/" + i2, schemaPath: "#/properties/cautions/additionalProperties/properties/drives/items/enum", keyword: "enum", params: { allowedValues: schema11.properties.cautions.additionalProperties.properties.drives.items.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.cautions.additionalProperties.properties.drives.items.enum, parentSchema: schema11.properties.cautions.additionalProperties.properties.drives.items, data: data10 };
                    if (vErrors === null) {
                      vErrors = [err19];
                    } else {
                      vErrors.push(err19);
                    }
                    errors++;
                  }
                }
              } else {
                const err20 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/drives", schemaPath: "#/properties/cautions/additionalProperties/properties/drives/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.cautions.additionalProperties.properties.drives.type, parentSchema: schema11.properties.cautions.additionalProperties.properties.drives, data: data9 };
                if (vErrors === null) {
                  vErrors = [err20];
                } else {
                  vErrors.push(err20);
                }
                errors++;
              }
            }
            if (data2.when !== void 0) {
              let data11 = data2.when;
              if (Array.isArray(data11)) {
                const len3 = data11.length;
                for (let i3 = 0; i3 < len3; i3++) {
                  let data12 = data11[i3];
                  if (!(data12 === "ohms" || data12 === "amps" || data12 === "light" || data12 === "lamp" || data12 === "bridge" || data12 === "lead" || data12 === "fed-wire" || data12 === "unplug" || data12 === "module-off" || data12 === "back-probe" || data12 === "spare" || data12 === "moving")) {
                    const err21 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/when/" + i3, schemaPath: "#/properties/cautions/additionalProperties/properties/when/items/enum", keyword: "enum", params: { allowedValues: schema11.properties.cautions.additionalProperties.properties.when.items.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.cautions.additionalProperties.properties.when.items.enum, parentSchema: schema11.properties.cautions.additionalProperties.properties.when.items, data: data12 };
                    if (vErrors === null) {
                      vErrors = [err21];
                    } else {
                      vErrors.push(err21);
                    }
                    errors++;
                  }
                }
              } else {
                const err22 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/when", schemaPath: "#/properties/cautions/additionalProperties/properties/when/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.cautions.additionalProperties.properties.when.type, parentSchema: schema11.properties.cautions.additionalProperties.properties.when, data: data11 };
                if (vErrors === null) {
                  vErrors = [err22];
                } else {
                  vErrors.push(err22);
                }
                errors++;
              }
            }
          } else {
            const err23 = { instancePath: instancePath + "/cautions/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/cautions/additionalProperties/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.cautions.additionalProperties.type, parentSchema: schema11.properties.cautions.additionalProperties, data: data2 };
            if (vErrors === null) {
              vErrors = [err23];
            } else {
              vErrors.push(err23);
            }
            errors++;
          }
        }
      } else {
        const err24 = { instancePath: instancePath + "/cautions", schemaPath: "#/properties/cautions/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.cautions.type, parentSchema: schema11.properties.cautions, data: data1 };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
    }
  } else {
    const err25 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err25];
    } else {
      vErrors.push(err25);
    }
    errors++;
  }
  validate10.errors = vErrors;
  return errors === 0;
}
export {
  stdin_default as default,
  validate
};
