package main

import (
	"errors"
	"maps"
	"net/http"
	"slices"
	"strings"

	"github.com/gin-gonic/gin"
	"github.com/goccy/go-yaml"

	"coatwright/planner"
	"coatwright/planner/cost"
	"coatwright/planner/quote"
	"coatwright/strictyaml"
	"coatwright/web"
)

// ratesSetting is where the shop's rates are kept.
const ratesSetting = "rates"

// quote shows what is asked for a kept plan at the shop's rates.
func (s *site) quote(c *gin.Context) error {
	saved, plan, err := s.savedPlan(c.Param("id"))
	if err != nil {
		return err
	}
	document, err := s.plans.Setting(ratesSetting)
	if err != nil {
		return err
	}
	page := s.quotePage(c, saved.ID, saved.Title, plan)
	if document == nil {
		return s.sendQuote(c, http.StatusOK, page)
	}
	rates, err := quote.ParseRates("the shop's rates", document, s.notes.Planner())
	if err != nil {
		return &failure{status: http.StatusConflict, heading: "The shop's rates can no longer be read", detail: err.Error() + ". Set them anew.", suggest: "/plan/" + saved.ID}
	}
	page.Values = ratesValues(rates)
	if page.Quote, err = quote.Of(plan, rates, s.notes.Planner()); err != nil {
		return err
	}
	return s.sendQuote(c, http.StatusOK, page)
}

// setRates keeps the rates that were posted beside a quote, with those that it
// does not show as they were. What cannot be read comes back as it was entered.
func (s *site) setRates(c *gin.Context) error {
	saved, plan, err := s.savedPlan(c.Param("id"))
	if err != nil {
		return err
	}
	form, err := postedForm(c, "rates")
	if err != nil {
		return err
	}
	document, err := s.plans.Setting(ratesSetting)
	if err != nil {
		return err
	}
	values := map[string]string{}
	if before, err := quote.ParseRates("the shop's rates", document, s.notes.Planner()); err == nil {
		values = ratesValues(before)
	}
	for name := range form {
		values[name] = strings.TrimSpace(form.Get(name))
	}
	document = ratesDocument(values)
	_, err = quote.ParseRates("rates", document, s.notes.Planner())
	var problems strictyaml.Problems
	if errors.As(err, &problems) {
		page := s.quotePage(c, saved.ID, saved.Title, plan)
		page.Values, page.Problems = values, map[string]string{}
		for _, p := range problems {
			page.Problems[p.Path] = messageOf(p)
		}
		return s.sendQuote(c, http.StatusUnprocessableEntity, page)
	}
	if err != nil {
		return err
	}
	if err := s.plans.SetSetting(ratesSetting, document); err != nil {
		return err
	}
	c.Redirect(http.StatusSeeOther, "/plan/"+saved.ID+"/quote")
	return nil
}

func (s *site) quotePage(c *gin.Context, id, title string, plan *planner.Plan) web.QuotePage {
	return web.QuotePage{Frame: frame(c, "Quote: "+title, web.AtJobs), ID: id, Plan: plan, Values: map[string]string{}, Titles: s.titles()}
}

// sendQuote shows a quote, or sends it as JSON.
func (s *site) sendQuote(c *gin.Context, status int, page web.QuotePage) error {
	c.Header("Vary", "Accept, Cookie")
	if wantsJSON(c) {
		c.JSON(status, gin.H{"quote": page.Quote, "problems": page.Problems})
		return nil
	}
	return send(c, status, page)
}

// ratesValues is what stands in the fields of rates, by the keys of their
// document: "labour", "materials.pearl".
func ratesValues(r *quote.Rates) map[string]string {
	out := map[string]string{
		"currency": string(r.Currency), "overhead": r.Overhead.String(), "mark-up": r.MarkUp.String(), "tax": r.Tax.String(),
	}
	for key, p := range map[string]cost.Price{"labour": r.Labour, "booth": r.Booth} {
		if p != (cost.Price{}) {
			out[key] = p.String()
		}
	}
	for slug, p := range r.Materials {
		out["materials."+slug] = p.String()
	}
	for slug, p := range r.Pieces {
		out["pieces."+slug] = p.String()
	}
	return out
}

// ratesDocument makes a document of rates of what stands in the fields; those
// left empty are left out.
func ratesDocument(values map[string]string) []byte {
	doc, groups := yaml.MapSlice{}, map[string]yaml.MapSlice{}
	for _, key := range slices.Sorted(maps.Keys(values)) {
		group, slug, grouped := strings.Cut(key, ".")
		switch {
		case values[key] == "":
		case grouped:
			groups[group] = append(groups[group], yaml.MapItem{Key: slug, Value: values[key]})
		default:
			doc = append(doc, yaml.MapItem{Key: key, Value: values[key]})
		}
	}
	for _, group := range slices.Sorted(maps.Keys(groups)) {
		doc = append(doc, yaml.MapItem{Key: group, Value: groups[group]})
	}
	document, err := yaml.MarshalWithOptions(doc, yaml.JSON())
	if err != nil {
		panic("server: a map of texts cannot be written: " + err.Error())
	}
	return document
}
