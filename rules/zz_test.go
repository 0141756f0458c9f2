package rules_test
import ("testing";"fmt";"sort"
"wickrule/lint";"wickrule/rules";"wickrule/schema")
func TestZZ(t *testing.T){
 shop:=exampleShop(t); all:=rules.All()
 base:=lint.Run(shop,all,today)
 for _,u:=range base.Unchecked{fmt.Println("BASE unchecked",u.Needs,u.Message)}
 for _,f:=range base.Findings{fmt.Println("BASE",f.Level,f.Rule.Name,f.Message)}
 silent:=map[string][]string{}
 loud:=map[string]int{}
 var walk func(f *schema.File,b *schema.Block)
 walk=func(f *schema.File,b *schema.Block){
  for _,a:=range b.Attrs{
   v:=b.Get(a.Spec.Name)
   text,err:=schema.Apply(f.Text.String(),[]schema.Edit{schema.RemoveAttr(v)})
   if err!=nil{t.Fatal(err)}
   laid,_:=with(shop,f.Name,text)
   r:=lint.Run(laid,all,today)
   sane(t,r,b.Label+"."+a.Spec.Name)
   k:=b.Spec.ID+"."+a.Spec.Name
   if len(r.Unchecked)==len(base.Unchecked)&&len(r.Findings)==len(base.Findings){
     silent[k]=append(silent[k],b.Label)
   } else {loud[k]++}
  }
  for _,in:=range b.Blocks{walk(f,in)}
 }
 for _,f:=range shop.Files{
  for _,b:=range f.Blocks{ if b.Spec.Stock{walk(f,b)}}
 }
 var ks []string
 for k:=range silent{ks=append(ks,k)}
 sort.Strings(ks)
 for _,k:=range ks{fmt.Println("SILENT",k,silent[k],"loud:",loud[k])}
}
